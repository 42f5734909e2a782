"""A game as it is needed while it is played: clock, sides, what is counted, what decides."""

from __future__ import annotations

import library
from compose.draw.card.of_remix import titled
from compose.forecast.standings import idle_places
from compose.modifiers.content_hash import content_hash
from compose.net.from_game import net_of
from compose.net.match import match_of
from compose.page.answers.at_hand import remixed
from compose.page.answers.counting import counters
from compose.page.answers.deciding import NOTHING, deciding
from compose.page.answers.for_class import cared_for, players_of
from compose.page.answers.hall_values import HallGame
from compose.page.answers.known import fit_of_asked
from compose.page.answers.values import Asked
from compose.page.wording import page_wording
from compose.staging.resolved import resolved
from compose.telling.care import MOST_TOLD
from compose.telling.french import side_label
from compose.telling.voice import Voice
from grammar.core.ends import Meeting


def hall(slug: str, asked: Asked) -> HallGame | None:
    """What the hall screen shows of a remix; None where it cannot be made."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    if made is None:
        return None
    found, core = fit_of_asked(asked), resolved(made.game)
    match = match_of(core)
    bell = core.play.bell
    players = players_of(found)
    # Four groups on two courts, or as many as like on one of which some rest.
    taking_turns = match.meeting is not None and (match.courts == 1 or 2 * match.courts == match.groups == 4)
    voice = Voice(core, wording)
    net = net_of(made.game, library.granted_sheet(), players).value
    counted = tuple(counters(net, made.game, players, voice)) if net is not None else ()
    return HallGame(
        slug,
        asked.uses,
        titled(made).title,
        content_hash(made.game.sheet),
        tuple((side.name, side_label(wording, side.name)) for side in made.game.sides),
        float(bell.after_s) if bell is not None else None,
        match.most_rounds,
        max(1, found.staging.teams.playing or found.staging.pupils),
        counted,
        deciding(voice) if len(counted) == len(made.game.sides) else NOTHING,
        cared_for(found.staging, wording)[:MOST_TOLD],
        net is None or bool(idle_places(net)),
        match.groups if taking_turns else 0,
        match.courts if taking_turns else 1,
        match.meeting is Meeting.ALL_MEET_ALL,
    )

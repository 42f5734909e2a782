"""A game as it is needed while it is played: clock, sides, what is counted, what decides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.draw.card.of_remix import titled
from compose.modifiers.content_hash import content_hash
from compose.net.match import match_of
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import players_of
from compose.page.answers.known import fit_of_asked
from compose.page.answers.values import Asked, Counter, HallGame
from compose.page.wording import page_wording
from compose.staging.resolved import resolved
from compose.telling.french import side_label
from compose.telling.wording import Wording
from grammar.core.rules import Add
from grammar.game import Game


def hall(slug: str, asked: Asked) -> HallGame | None:
    """What the hall screen shows of a remix; None where it cannot be made."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    if made is None:
        return None
    found, core = fit_of_asked(asked), resolved(made.game)
    bell = core.play.bell
    return HallGame(
        slug,
        asked.uses,
        titled(made).title,
        content_hash(made.game.sheet),
        tuple((side.name, side_label(wording, side.name)) for side in made.game.sides),
        float(bell.after_s) if bell is not None else None,
        match_of(core).most_rounds,
        max(1, found.staging.teams.playing or found.staging.pupils),
        tuple(_counters(made.game, players_of(found), wording)),
        tuple(wording.author(each) for each in found.staging.cautions[:3]),
    )


def _counters(game: Game, players: Mapping[str, int], wording: Wording) -> Iterator[Counter]:
    """For each side its points where there are any, else its things that can fall."""
    scored = any(isinstance(effect, Add) for rule in resolved(game).play.rules for effect in rule.effects)
    targets = [line for line in game.kit if line.category == "target"]
    for side in game.sides:
        own = next((line for line in targets if line.total(players, side.name)), None)
        if scored:
            yield Counter(side.name, wording.say("points"), 0)
        elif own is not None:
            yield Counter(side.name, wording.named(own.plural), own.total(players, side.name))

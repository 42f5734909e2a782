"""A game in the list: its picture and a line, what a class lacks for it, and how long pupils wait in it."""

from __future__ import annotations

import library
from compose.answer.answer import Answer, to_mend
from compose.answer.foreseeing import with_means
from compose.answer.proving import proved_as_it_stands
from compose.answer.staged import staged
from compose.fit.fit import Fit
from compose.page.answers.at_hand import game_of
from compose.page.answers.for_class import fit_by_forecast, fitted, players_of
from compose.page.answers.group import group_of
from compose.page.answers.known import FIRST_LOOK, PLAY
from compose.page.answers.said import in_order, said
from compose.page.answers.small_plan import small_plan
from compose.page.answers.values import Row
from compose.page.wording import page_wording
from compose.staging.resolved import resolved
from compose.staging.teams import least_pupils, most_pupils
from grammar.finding import Severity


def row(slug: str, texts: tuple[str, ...], group: str, language: str) -> Row:
    """The row of a game for a class."""
    wording = page_wording(language)
    outcome, school_class = game_of(texts), group_of(group).value
    game = outcome.value
    if game is None or school_class is None:
        wrong = tuple(said(each, wording).title for each in outcome.findings)
        return Row(slug, slug, "", (0, 0), (0, 0), (), "", (), False, False, broken=wrong)
    found = _by_forecast(fitted(game, school_class))
    mend = in_order(to_mend(found.findings))
    core, room = resolved(game), found.staging.room
    low, high = game.ages_years
    youngest, oldest = school_class.ages_years or game.ages_years
    return Row(
        slug,
        game.title,
        " ".join(wording.author(each) for each in core.told.about),
        (round(low), round(high)),
        (least_pupils(game), most_pupils(game)),
        tuple((skill, wording.known("skill", skill) or skill) for skill in core.facts.skills),
        small_plan(game, players_of(found), wording, f"small-{slug}-"),
        tuple(said(each, wording).title for each in mend),
        all(each.short <= 0 for each in found.staging.kit),
        low <= oldest and youngest <= high,
        room.short_in_all_m if room is not None else 0.0,
        any(each.severity is Severity.ERROR for each in mend),
    )


def _by_forecast(found: Fit) -> Fit:
    """With rounds as long as they are forecast where their number says whether the class can play; the forecast takes
    longer than all the rest of a row."""
    unsure = found.lesson.round_min is None or to_mend(found.of_time)
    if not unsure or to_mend(found.staging.findings):
        return found
    answer = _forecast(found)
    return fit_by_forecast(found, answer.round_minutes) if answer is not None else found


def _forecast(found: Fit) -> Answer | None:
    ready = staged(found.staging, library.granted_sheet())
    if ready.value is None:
        return None
    known = proved_as_it_stands(ready.value, FIRST_LOOK)
    return with_means(known, library.norms(), library.kit_names(), PLAY, FIRST_LOOK)


def waiting(texts: tuple[str, ...], group: str) -> float | None:
    """The share of a round in which a pupil does not play; None where it cannot be said."""
    game, school_class = game_of(texts).value, group_of(group).value
    if game is None or school_class is None:
        return None
    answer = _forecast(fitted(game, school_class))
    return answer.numbers.idle.value if answer is not None and answer.numbers else None

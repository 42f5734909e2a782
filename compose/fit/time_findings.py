"""The lesson: whether a round fits, and as many as the game asks for."""

from __future__ import annotations

from collections.abc import Iterator

from compose.fit.lesson_plan import LessonPlan
from compose.staging.found import note, warning
from compose.staging.where import of_length
from grammar.finding import Finding
from grammar.game import Game
from grammar.words import count

_SHORTER = 'Let the clock end a round sooner, with a line under finish such as "after 4 min: ...".'


def time_findings(game: Game, plan: LessonPlan) -> Iterator[Finding]:
    """Whether rounds fit in the lesson: one at least, and as many as the game asks for."""
    if plan.round_min is None:
        title = "Nothing says how long a round takes: the game has no clock and was not forecast."
        yield note("F-time", title, of_length(game), "Forecast it, or add a time limit.")
        return
    left = plan.lesson.play
    said = f"{left:.3g} min are left for play of {plan.lesson.minutes:g}, a round takes {plan.round_min:.3g} min"
    numbers = {"play_min": left, "round_min": plan.round_min, "rounds": plan.rounds}
    if plan.rounds < 1:
        title = f"Not even one round fits: {said}."
        yield warning("F-time", title, of_length(game), _SHORTER, **numbers)
    elif plan.rounds < plan.wanted:
        title = f"{count(plan.rounds, 'round')} of {plan.wanted} fit: {said}."
        yield warning("F-time", title, of_length(game), f"{_SHORTER} Or play fewer rounds.", **numbers)

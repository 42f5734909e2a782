"""The lesson: whether a round fits, and as many as the game asks for."""

from __future__ import annotations

from collections.abc import Iterator

from compose.fit.lesson_plan import LessonPlan
from compose.staging.found import note, warning
from compose.staging.resolved import resolved
from compose.staging.where import of_length
from grammar.finding import Finding
from grammar.game import Game
from grammar.said import Chain, Figure, Many, said

_LEVEL = (
    "Let a level score be a draw once the time is up, with a line under finish such as "
    '"after 4 min: more points wins, else a draw".'
)
_SHORTER = 'Let the clock end a round sooner, with a line under finish such as "after 4 min: ...".'


def time_findings(game: Game, plan: LessonPlan) -> Iterator[Finding]:
    """Whether rounds fit in the lesson: one at least, and as many as the game asks for."""
    if plan.round_min is None:
        unsaid = "Nothing says how long a round takes: the game has no clock and was not forecast."
        yield note("F-time", unsaid, of_length(game), "Forecast it, or add a time limit.")
        return
    left = plan.lesson.play
    time = said(
        "{left} min are left for play of {lesson}, a round takes {time} min",
        left=Figure(left, ".3g"),
        lesson=Figure(plan.lesson.minutes),
        time=Figure(plan.fitting.each, ".3g"),
    )
    bell = resolved(game).play.bell
    shorter = _LEVEL if bell is not None and bell.goes_on else _SHORTER
    numbers = {"play_min": left, "round_min": plan.round_min, "rounds": plan.rounds}
    if plan.rounds < 1:
        title = said("Not even one round fits: {time}.", time=time)
        yield warning("F-time", title, of_length(game), shorter, **numbers)
    elif plan.rounds < plan.wanted:
        rounds = Many(plan.rounds, "round", "rounds")
        title = said("{rounds} of {wanted} fit: {time}.", rounds=rounds, wanted=plan.wanted, time=time)
        yield warning("F-time", title, of_length(game), Chain((shorter, "Or play fewer rounds.")), **numbers)

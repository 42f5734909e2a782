"""Successes in a row: a count of each side, which a failure puts back to nothing."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.net import Assign, Effect, Place, Shift
from compose.net.outcome import Moment
from grammar.core.rules import Result
from grammar.core.runs import InARow

FAILED = frozenset({Result.MISSED, Result.CAUGHT, Result.LEFT, Result.BLOCKED, Result.HIGH})


def row_place(builder: Builder, run: InARow) -> int:
    """The count of a side's successes in a row."""
    skills = "+".join(sorted(skill.value for skill in run.skills))
    name = f"row/{run.side.key}/{run.number}/{skills}"
    place = Place(name, "row", run.number, 0, run.side.key, skills=run.skills)
    return builder.add_place(("row", run), place)


def row_effects(builder: Builder, moment: Moment) -> Iterator[Effect]:
    """What an attempt does to the counts of those that it is one of."""
    for rule in builder.play.rules:
        run = rule.trigger
        if isinstance(run, InARow) and run.side == moment.by.side and moment.skill in run.skills:
            place = row_place(builder, run)
            failed = moment.result in FAILED
            yield Assign(place, 0, builder.rule(rule.lines)) if failed else Shift(place, 1, builder.rule(rule.lines))

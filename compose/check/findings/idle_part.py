"""Idle part of a line: of several things that it says one never holds, since another line says it first each time.

The rest of the line is in force, so that it is not idle as a whole; what it says besides is read out for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.check.found import Found
from compose.check.study import Study
from compose.net.net import Rule
from compose.net.told import Strayed, Tried
from grammar.core.rules import Add, Effect, Go, LifeOf, Put, SendBall, Swap
from grammar.core.values import At
from grammar.finding import IDLE, Severity
from grammar.said import said

SAYS = {
    Put: "what becomes of the thing that is knocked",
    Go: "where a player goes",
    Swap: "where a player goes",
    LifeOf: "whether a life is lost",
    SendBall: "where the ball goes",
    Add: "the points",
}


def idle_part(study: Study) -> list[Found]:
    """One finding for each line of which a part never holds, where the others do."""
    done: dict[Rule, set[object]] = {}
    for rule, effects in _in_force(study):
        done.setdefault(rule, set()).update(map(_shape, effects))
    found = list[Found]()
    for rule in dict.fromkeys(rule for rule, _ in study.net.following):
        said_by_it = [each for one, several in study.net.following if one == rule for each in several]
        never = [each for each in said_by_it if rule in done and type(each) in SAYS and _shape(each) not in done[rule]]
        if never:
            found.append(_finding(rule, never[0]))
    return found


def _in_force(study: Study) -> Iterator[tuple[Rule, tuple[Effect, ...]]]:
    """What follows from attempts that were ever made, for each of the lines behind it."""
    for move, happened in zip(study.net.transitions, study.space.happened, strict=True):
        tried = (move.told.missed, move.told.hit) if isinstance(move.told, Strayed) else (move.told,)
        if happened.fired:
            effects = tuple(each for one in tried if isinstance(one, Tried) for each in one.effects)
            yield from ((rule, effects) for rule in move.rules)


def _shape(effect: Effect) -> object:
    """An effect without whose it is: what holds for one side is no idle word."""
    if isinstance(effect, Put):
        return Put, effect.posture
    if isinstance(effect, Go):
        return Go, effect.to.spot.of if isinstance(effect.to, At) else effect.to
    return type(effect)


def _finding(rule: Rule, effect: Effect) -> Found:
    return Found(
        code=IDLE,
        severity=Severity.WARNING,
        title=said("Of {line} a part never takes effect: {what}.", line=rule, what=SAYS[type(effect)]),
        place=rule.span,
        hint="Another line says it first each time. Leave that part out, or change when each of the two holds.",
    )

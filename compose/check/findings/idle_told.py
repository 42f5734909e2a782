"""Sentences that never take effect, told: what one reason keeps idle is told as one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.check.found import Found, Value
from compose.check.never import Why
from compose.net.net import Rule
from grammar.core.rules import Result
from grammar.finding import Severity
from grammar.frozen import frozen
from grammar.said import Capital, Chain, Listed, said

CODE = "C-idle"
HELPING = ("fetch", "free")  # acts that only bring back what went away: where nothing does, they do no harm
UNAIMED = {
    Result.HIT: Why("nobody aims at players, and the check reckons with no hit by accident"),
    Result.TOUCHED: Why("nobody touches players"),
}
_MEND = "Leave it out, or change what has to happen for it."
_MEND_ALL = "Leave them out, or change what has to happen for them."


@frozen
class Idle:
    """A sentence that never takes effect, why (of each part), and whether it only stands by for what never comes."""

    rule: Rule
    whys: tuple[Why, ...]
    harmless: bool


def told(idle: Iterable[Idle], numbers: tuple[tuple[str, float], ...] = ()) -> list[Found]:
    """One finding for each reason that keeps sentences from taking effect."""
    groups: list[list[Idle]] = []
    for found in idle:
        alike = next((group for group in groups if _common([*group, found])), None)
        if alike is None:
            groups.append([found])
        else:
            alike.append(found)
    return [_finding(alike, numbers) for alike in groups]


def _common(alike: list[Idle]) -> tuple[Why, ...]:
    """The reasons that keep all of them idle; none where some do no harm and others do."""
    if len({each.harmless for each in alike}) > 1:
        return ()
    first, *others = alike
    return tuple(why for why in first.whys if all(why in each.whys for each in others))


def _finding(alike: list[Idle], numbers: tuple[tuple[str, float], ...]) -> Found:
    first, others = alike[0], alike[1:]
    shared = _common(alike)[0]
    title = said("{line} never takes effect.", line=first.rule)
    if others:
        title = said("{line} and 1 other line never take effect.", line=first.rule)
        if len(others) > 1:
            title = said("{line} and {number} other lines never take effect.", line=first.rule, number=len(others))
    return Found(
        code=CODE,
        severity=Severity.NOTE if first.harmless else Severity.WARNING,
        title=title,
        place=first.rule.span,
        hint=Chain((said("{why}.", why=Capital(shared.told)), *_and_then(first, others))),
        others=tuple(dict.fromkeys((*(each.rule.span for each in others), *shared.lines))),
        numbers=numbers,
    )


def _and_then(first: Idle, others: list[Idle]) -> Iterator[Value]:
    """What is idle for the same reason, and what mends it."""
    if others:
        yield said("For the same reason: {lines}.", lines=Listed(tuple(each.rule for each in others)))
    if first.harmless:
        yield "It does no harm."
    else:
        yield _MEND_ALL if others else _MEND

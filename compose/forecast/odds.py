"""Who wins how often and how, and how often nobody does."""

from __future__ import annotations

from compose.forecast.course import Course, Figure
from compose.net.net import End, Net
from grammar.frozen import frozen


@frozen
class Way:
    """One way for the round to end: the first end that is it, its chance, `at_bell` where the clock stopped play."""

    end: End
    chance: Figure
    at_bell: bool

    @property
    def winner(self) -> str | None:
        """Who wins so."""
        return self.end.winner


@frozen
class Odds:
    """Chances that sum to 1: each side's win, a draw, nobody winning, no result said, and never over.

    `running` is the chance that the clock (or the lesson's end) stops play; what it leads to is in the others.
    """

    wins: tuple[tuple[str, Figure], ...]
    draw: Figure
    nobody: Figure
    unsaid: Figure
    never: Figure
    running: Figure
    ways: tuple[Way, ...]

    def of(self, side: str) -> float:
        """The chance that a side wins."""
        return next(chance.value for name, chance in self.wins if name == side)


def odds(net: Net, course: Course) -> Odds:
    """The odds of a round."""
    results = net.bell.results if net.bell is not None else ()
    ways = [*_ways(net.ends, course.by_end.tolist(), False), *_ways(results, course.by_result.tolist(), True)]

    def total(*chosen: float) -> Figure:
        return course.chance(min(1.0, max(0.0, sum(chosen))))

    return Odds(
        wins=tuple((side, total(*(chance for end, chance, _ in ways if end.winner == side))) for side in net.sides),
        draw=total(*(chance for end, chance, _ in ways if end.winner is None and not end.nobody)),
        nobody=total(*(chance for end, chance, _ in ways if end.winner is None and end.nobody)),
        unsaid=total(course.unsaid),
        never=total(course.never),
        running=total(course.stopped),
        ways=tuple(Way(end, total(chance), rang) for end, chance, rang in ways),
    )


def _ways(ends: tuple[End, ...], chances: list[float], rang: bool) -> list[tuple[End, float, bool]]:
    """Ends that are one way for one winner, added up under the first of them, in the order of the text."""
    found: dict[tuple[str | None, object], tuple[End, float]] = {}
    for end, chance in zip(ends, chances, strict=True):
        key = end.winner, end.told.way
        first, so_far = found.get(key, (end, 0.0))
        found[key] = first, so_far + chance
    return [(end, chance, rang) for end, chance in found.values()]

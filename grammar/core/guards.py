"""Conditions on counts."""

from __future__ import annotations

from collections.abc import Iterator
from enum import Enum
from fractions import Fraction

from grammar.core.runs import InARow
from grammar.core.values import At, KindId, OnStep, Population, Posture, Presence, SideId, Spot, Thing
from grammar.frozen import frozen


@frozen
class PlayersAt:
    """How many of these players are in play, out, or at a place."""

    of: frozenset[Population]
    at: frozenset[Presence | At]


@frozen
class ThingsAt:
    """How many of these things stand so."""

    of: frozenset[Thing]
    at: frozenset[Posture | OnStep | At]


@frozen
class BallsAt:
    """How many balls of these kinds lie at these places."""

    of: frozenset[KindId]
    at: frozenset[Spot]


@frozen
class Points:
    """The points of a side."""

    side: SideId


@frozen
class Clock:
    """1 once so much of the round is over, 0 before."""

    at_s: Fraction


@frozen
class Taken:
    """1 once a line that holds only the first time has taken effect, 0 before. `line` is its number among these."""

    line: int


@frozen
class Row:
    """A side's successes in a row, as far as they are asked for; whoever then tries what asks for them begins anew."""

    run: InARow


@frozen
class LivesOf:
    """The lives that the players of a side have left together, whoever waits counted, too."""

    side: SideId


@frozen
class TimesRun:
    """How often players of a side have run, all of them together."""

    side: SideId


Count = PlayersAt | ThingsAt | BallsAt | Points | LivesOf | Clock | Taken | Row | TimesRun


class Relation(Enum):
    """How a count compares with its bound."""

    AT_MOST = "<="
    EQUAL = "=="
    AT_LEAST = ">="


class Whole(Enum):
    """The bound of "all": as many as there are."""

    WHOLE = "all there are"


WHOLE = Whole.WHOLE


@frozen
class PartOfAll:
    """A bound by how many there are: half of them, rounded to the next that is enough, or all but so many.

    `beyond`: more than half (or fewer), not half itself.
    """

    halved: bool
    less: int = 0
    beyond: bool = False

    def of(self, all_there_are: int, relation: Relation) -> int:
        """The bound where there are so many."""
        if not self.halved:
            return all_there_are - self.less
        if relation is Relation.AT_LEAST:
            return all_there_are // 2 + 1 if self.beyond else (all_there_are + 1) // 2
        return (all_there_are + 1) // 2 - 1 if self.beyond else all_there_are // 2


@frozen
class OfEach:
    """A bound of so many times for each player; of sides that are not equally large as many as the largest needs."""

    times: int


@frozen
class Compare:
    """A count against a bound."""

    count: Count
    relation: Relation
    bound: int | Whole | PartOfAll | OfEach


@frozen
class Ahead:
    """A count is at least `by` more than so many `times` another."""

    count: Count
    than: Count
    times: int
    by: int


@frozen
class Every:
    """Every part holds; with no parts always."""

    parts: frozenset[Guard] = frozenset()


@frozen
class Either:
    """At least one part holds; with no parts never."""

    parts: frozenset[Guard] = frozenset()


Guard = Compare | Ahead | Every | Either
ALWAYS = Every()


def every(parts: list[Guard]) -> Guard:
    """All of them, in the plainest form."""
    flat: set[Guard] = set()
    for part in parts:
        flat |= part.parts if isinstance(part, Every) else {part}
    return next(iter(flat)) if len(flat) == 1 else Every(frozenset(flat))


def either(parts: list[Guard]) -> Guard:
    """One of them, in the plainest form."""
    flat: set[Guard] = set()
    for part in parts:
        flat |= part.parts if isinstance(part, Either) else {part}
    return next(iter(flat)) if len(flat) == 1 else Either(frozenset(flat))


def counts_in(guard: Guard) -> Iterator[Count]:
    """All that a guard counts."""
    if isinstance(guard, Compare):
        yield guard.count
        return
    if isinstance(guard, Ahead):
        yield from (guard.count, guard.than)
        return
    for part in guard.parts:
        yield from counts_in(part)

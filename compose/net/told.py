"""What happens, follows and ends a round, in the core's values: what whoever tells of it needs to know, and no more.

Nothing is worked out from these values; what a move does stands in its effects.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from compose.net.outcome import Moment
from grammar.core.ends import Best, Deciding, Left, Lost, Most, NextKnocked, NoWinner, Verdict, Won
from grammar.core.guards import Guard
from grammar.core.play import Waiting
from grammar.core.rules import Effect
from grammar.core.runs import InARow
from grammar.core.values import KindId, Population, SideId, Spot, Teacher, Thing
from grammar.frozen import frozen

Effects = tuple[Effect, ...]
Doer = Population | Teacher


@frozen
class Tried:
    """An attempt with what came of it and what follows; `stops` is where the ball stays that does not get through."""

    moment: Moment
    effects: Effects
    stops: Spot | None = None


@frozen
class Strayed:
    """An attempt that misses and hits something else, with what follows from each."""

    missed: Tried
    hit: Tried


@frozen
class Held:
    """Somebody holds a ball too long."""

    who: Population
    ball: KindId
    effects: Effects


@frozen
class FouledSo:
    """Somebody fouls, where it matters somebody of which of several sides."""

    who: Population
    effects: Effects
    against: SideId | None = None


@frozen
class AllHeld:
    """Everybody has held a ball for so long."""

    time_s: Fraction
    effects: Effects


@frozen
class Fetched:
    """Somebody fetches a ball."""

    who: Doer
    ball: KindId
    spot: Spot


@frozen
class Freed:
    """Somebody frees who waits."""

    who: Doer
    waiting: Waiting


@frozen
class StoodUp:
    """Somebody puts up again what has fallen."""

    who: Doer
    thing: Thing


@frozen
class CameBack:
    """Somebody who waited comes back without help."""

    who: Population
    spot: Spot


@frozen
class Ticked:
    """So much of the round is over, or (`again`) so much since the last time."""

    at_s: Fraction
    again: bool
    effects: Effects


@frozen
class TimeOver:
    """The time of the round is over, and play goes on."""


Happened = Tried | Strayed | Held | FouledSo | AllHeld | Fetched | Freed | StoodUp | CameBack | Ticked | TimeOver


@frozen
class BecameSo:
    """A condition has become true."""

    guard: Guard
    effects: Effects


@frozen
class RanOn:
    """So many successes came in a row."""

    run: InARow
    effects: Effects


Followed = BecameSo | RanOn


class Cause(Enum):
    """What ends a round where no condition of the finish does."""

    RULE = "a rule that names the winner"
    BOTH_AT_ONCE = "two sides win by one move"
    OVER_OR_NEXT = "the time is over, or a point later"


@frozen
class TimeUp:
    """The clock ends the round."""

    after_s: Fraction


Because = Guard | Cause | TimeUp


@frozen
class Ended:
    """A result with what brings it about; `winner` is who wins by it, where somebody does."""

    verdict: Verdict
    because: Because
    winner: SideId | None = None

    @property
    def way(self) -> Verdict | Because:
        """What is one way of winning, whatever brings it about where the result alone says it."""
        match self.verdict:
            case NoWinner() | Lost() | Most() | Best() | Left():
                return self.verdict
            case Won() | Deciding() | NextKnocked():
                return self.because

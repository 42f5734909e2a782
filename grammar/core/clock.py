"""What the clock brings about while play goes on: when, and which balls come in or go."""

from __future__ import annotations

from fractions import Fraction

from grammar.core.values import KindId
from grammar.frozen import frozen


@frozen
class AtTime:
    """So much of the round is over; `again`: and over again after so long, as long as play goes on."""

    at_s: Fraction
    again: bool = False


@frozen
class ComeIn:
    """Balls that the teacher has come into play, dealt out to the sides: so many, or all (None)."""

    balls: frozenset[KindId]
    count: int | None


@frozen
class TakeEffect:
    """A line that holds only the first time has taken effect: that of this number among them."""

    line: int


@frozen
class TakeAway:
    """The teacher takes all balls of these kinds out of play."""

    balls: frozenset[KindId]

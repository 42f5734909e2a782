"""The clock of a round: moments, such as "every 2 min", and parts, such as "in the last minute"."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Quantity, spoken

_A_MINUTE = Quantity(1.0, "min")


@frozen
class SpanAfter(Node):
    """Such as "after 2 min": from then on."""

    time: Quantity

    def words(self) -> str:
        return spoken("after", self.time)


@frozen
class SpanFirst(Node):
    """Such as "in the first 2 min"."""

    time: Quantity = field(default=_A_MINUTE)

    def words(self) -> str:
        return spoken("in the first", *_how_long(self.time))


@frozen
class SpanLast(Node):
    """Such as "in the last minute": before the clock ends the round."""

    time: Quantity = field(default=_A_MINUTE)

    def words(self) -> str:
        return spoken("in the last", *_how_long(self.time))


@frozen
class TheFirstTime(Node):
    """Once in a round, and never again."""

    def words(self) -> str:
        return "the first time"


def _how_long(time: Quantity) -> tuple[Quantity | str]:
    return ("minute",) if time == _A_MINUTE and not time.parameter else (time,)


TimeSpan = SpanAfter | SpanFirst | SpanLast
WhenSpan = TimeSpan | TheFirstTime


@frozen
class AfterTime(Node):
    """Such as "after 2 min": once, when so much of the round is over."""

    time: Quantity

    def words(self) -> str:
        return spoken("after", self.time)


@frozen
class EveryTime(Node):
    """Such as "every 2 min": again and again."""

    determiner: str
    time: Quantity

    def words(self) -> str:
        return spoken(self.determiner, self.time)


@frozen
class HalfTime(Node):
    """When half the time of the clock is over: "at half-time"."""

    moment: str

    def words(self) -> str:
        return self.moment


OfClock = AfterTime | EveryTime | HalfTime

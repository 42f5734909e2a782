"""What can happen: the first half of a sentence of the section when."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import Node, Np, Quantity, spoken
from grammar.sentences.blocking import Blocked
from grammar.sentences.claims import Claim
from grammar.sentences.fouls import Fouls
from grammar.sentences.lives import LastLife
from grammar.sentences.runs import InARow
from grammar.sentences.time import OfClock


@frozen
class Knocked(Node):
    """Such as "a lantern is knocked"."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is knocked")


@frozen
class Hit(Node):
    """Such as "a player is hit", "a player who carries a log is hit"."""

    who: Np
    linked: str | None = field(eq=False)
    load: Np | None
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "who carries" if self.load else None, self.load, "is hit")


@frozen
class HitHigh(Node):
    """Such as "a player is hit above the shoulder": no hit that counts, but perhaps a foul."""

    who: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "is hit above the shoulder")


@frozen
class Touched(Node):
    """Such as "a player is touched", "a player who carries a log is touched"."""

    who: Np
    linked: str | None = field(eq=False)
    load: Np | None
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "who carries" if self.load else None, self.load, "is touched")


@frozen
class Caught(Node):
    """Such as "a throw is caught"; with a place, a pass that arrives: "a pass is caught on the far bench"."""

    what: Np
    verb: str = field(eq=False)
    preposition: str | None = None
    where: Np | None = None

    def words(self) -> str:
        return spoken(self.what, "is caught", self.preposition, self.where)


@frozen
class Missed(Node):
    """Such as "a ball is missed": the attempt reached nothing."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is missed")


@frozen
class GoesThrough(Node):
    """Such as "a ball goes through a ring"."""

    what: Np
    verb: str = field(eq=False)
    through: Np

    def words(self) -> str:
        return spoken(self.what, "goes through", self.through)


@frozen
class GoesInto(GoesThrough):
    """Such as "a ball goes into a box"."""

    def words(self) -> str:
        return spoken(self.what, "goes into", self.through)


@frozen
class Crosses(Node):
    """Such as "a ball crosses the back line"."""

    what: Np
    line: Np

    def words(self) -> str:
        return spoken(self.what, "crosses", self.line)


@frozen
class Leaves(Node):
    """Such as "a ball leaves the court"."""

    what: Np
    where: Np

    def words(self) -> str:
        return spoken(self.what, "leaves", self.where)


@frozen
class HeldLong(Node):
    """Such as "a ball is held longer than 10 s"."""

    what: Np
    verb: str = field(eq=False)
    limit: Quantity

    def words(self) -> str:
        return spoken(self.what, "is held longer than", self.limit)


@frozen
class EveryoneHolds(Node):
    """Such as "everyone holds a ball for 5 s"."""

    time: Quantity

    def words(self) -> str:
        return spoken("everyone holds a ball for", self.time)


@frozen
class Arrives(Node):
    """Such as "a carrier arrives", "a runner arrives at the far mark": somebody reached where they were going."""

    who: Np
    where: Np | None = None

    def words(self) -> str:
        return spoken(self.who, "arrives", "at" if self.where else None, self.where)


@frozen
class Becomes(Node):
    """Such as "a side has no balls in its half": follows at once when it becomes true."""

    claim: Claim

    def words(self) -> str:
        return self.claim.words()


Deed = Knocked | Hit | Touched | Caught | Intercepted | Blocked | Missed | GoesThrough | Crosses | Leaves | Arrives


Event = Deed | HeldLong | EveryoneHolds | Becomes | OfClock | LastLife | InARow | Fouls

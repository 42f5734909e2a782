"""Lives: how many each has, and how they come and go."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, Quantity, spoken
from grammar.sentences.queues import AllQueued, Queued


@frozen
class HasLives(Node):
    """Such as "each player has 3 lives"."""

    who: Np
    verb: str = field(eq=False)
    number: Quantity
    noun: str = field(eq=False)

    def words(self) -> str:
        has = "have" if self.who.determiner == "all" else "has"
        return spoken(self.who, has, self.number, "life" if self.number.value == 1 else "lives")


@frozen
class LastLife(Node):
    """Such as "a player loses the last life", "a player has lost 3 lives": as many as each has."""

    who: Np
    verb: str = field(eq=False)
    number: Quantity | None = None
    noun: str | None = field(default=None, eq=False)

    def words(self) -> str:
        if self.number is None:
            return spoken(self.who, "loses the last life")
        return spoken(self.who, "has lost", self.number, "life" if self.number.value == 1 else "lives")


@frozen
class LosesLife(Node):
    """Such as "that player loses a life"."""

    who: Np | Queued | AllQueued
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "loses a life")


@frozen
class WinsLife(Node):
    """Such as "the catcher gets a life back": never more than at the start, which can be said."""

    who: Np | Queued | AllQueued
    verb: str = field(eq=False)
    most: Quantity | None = None

    def words(self) -> str:
        most = "" if self.most is None else f", at most {self.most.words()}"
        return spoken(self.who, "gets a life back") + most

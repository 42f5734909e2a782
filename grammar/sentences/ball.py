"""Whose the ball is: sentences that give it to a side, or say who has it after a catch, a miss, at the start."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import AnySide, Name, Node, Np, Quantity, SideNamed, SideOf, SideRef, spoken
from grammar.sentences.determiners import ALL, EACH


@frozen
class RestTo(Node):
    """Such as "to the far bench", "to the catcher", "to north"."""

    where: Np

    def words(self) -> str:
        return spoken("to", self.where)


@frozen
class RestToSide(Node):
    """Such as "to the other side", "to the catcher's side"."""

    side: SideRef | SideOf

    def words(self) -> str:
        return spoken("to", self.side)


@frozen
class KeptBy(Node):
    """Such as "stays with the catcher"."""

    verb: str = field(eq=False)
    whom: RestTo | RestToSide

    def words(self) -> str:
        return spoken("stays with", self.whom.words().removeprefix("to "))


@frozen
class HasBall(Node):
    """What follows: "the other side has the ball"."""

    side: AnySide
    verb: str = field(eq=False)
    ball: Np

    def words(self) -> str:
        return spoken(self.side, "has", self.ball)


@frozen
class CatcherHas(Node):
    """Such as "whoever catches a ball has it"."""

    ball: Np

    def words(self) -> str:
        return spoken("whoever catches", self.ball, "has it")


@frozen
class FirstHas(Node):
    """Such as "whoever is first at a loose ball has it"."""

    ball: Name

    def words(self) -> str:
        return spoken("whoever is first at a loose", self.ball, "has it")


@frozen
class BeginsWith(Node):
    """Such as "north begins with the ball", "each side begins with 2 foam balls"."""

    side: AnySide
    verb: str = field(eq=False)
    count: Quantity | None
    ball: Np

    def words(self) -> str:
        return spoken(self.side, "begins with", self.count, self.ball)

    @property
    def number(self) -> int | None:
        """How many; None for all that there are."""
        if self.count is not None:
            return self.count.whole
        return 1 if self.ball.determiner in ("a", "an") else None

    @property
    def for_each_player(self) -> bool:
        """Whether each player of a side has so many: "each pike begins with 1 ball"."""
        return isinstance(self.side, SideNamed) and self.side.determiner in EACH

    @property
    def for_each(self) -> bool:
        """Whether each side has so many."""
        return isinstance(self.side, SideRef) and self.side.determiner in ALL


@frozen
class Intercepted(Node):
    """Such as "a pass is intercepted": the other side catches it."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is intercepted")

"""What a modifier needs of a game, and what it clashes with."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, spoken
from grammar.sentences.events import Event


@frozen
class NeedsEvent(Node):
    """Such as "needs a rule for when a player is hit"."""

    event: Event

    def words(self) -> str:
        return spoken("needs a rule for when", self.event)


@frozen
class NeedsBall(Node):
    """Such as "needs a ball fit for kick"."""

    skill: str

    def words(self) -> str:
        return spoken("needs a ball fit for", self.skill)


@frozen
class NeedsThing(Node):
    """Such as "needs a queue"."""

    thing: Np

    def words(self) -> str:
        return spoken("needs", self.thing)


@frozen
class NeedsSkill(Node):
    """Such as "needs overarm throw"."""

    skill: str

    def words(self) -> str:
        return spoken("needs", self.skill)


@frozen
class NeedsPoints(Node):
    """Needs a rule that gives points."""

    points: str = field(default="points", eq=False)

    def words(self) -> str:
        return "needs points"


@frozen
class NeedsTwoSides(Node):
    """Needs a game of two sides or more."""

    def words(self) -> str:
        return "needs two sides"


@frozen
class NeedsClock(Node):
    """Needs a game that a clock ends."""

    def words(self) -> str:
        return "needs a clock"


@frozen
class Clashes(Node):
    """Such as "clashes with "roll instead"": the other modifier's name."""

    modifier: str

    def words(self) -> str:
        return f'clashes with "{self.modifier}"'

"""Sentences of a modifier: its heading, what it takes, what it changes."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Name, Node, Np, Owner, OwnerName, Quantity, spoken


@frozen
class Heading(Node):
    """Such as "heading task": the STEP heading (space, task, equipment, people), a framework of the trade."""

    heading: str

    def words(self) -> str:
        return self.heading

    @property
    def step(self) -> str:
        """Such as "space", "task", "equipment" or "people"."""
        return self.heading.removeprefix("heading ")


@frozen
class Takes(Node):
    """Such as "takes n: 1 to 12, usually 1"."""

    parameter: str
    least: Quantity
    most: Quantity
    usually: Quantity

    def words(self) -> str:
        return f"takes {self.parameter}: {self.least.words()} to {self.most.words()}, usually {self.usually.words()}"


@frozen
class ChangeSkill(Node):
    """Such as "change overarm throw, underarm throw to kick"."""

    skills: tuple[str, ...]
    to: str

    def words(self) -> str:
        return f"change {', '.join(self.skills)} to {self.to}"


@frozen
class AddKit(Node):
    """Such as "add 2 balls", "add 1 targets for each side"."""

    count: Quantity
    what: Name
    owner: Owner | OwnerName | None = None

    def words(self) -> str:
        return spoken("add", self.count, self.what, spoken("for", self.owner) if self.owner else "")


@frozen
class AddLater(Node):
    """Such as "add 2 balls for later": the set-up stays as it is, for they come in while play goes on."""

    count: Quantity
    what: Name

    def words(self) -> str:
        return spoken("add", self.count, self.what, "for later")


@frozen
class TakeKit(Node):
    """Such as "take away 2 balls"."""

    count: Quantity
    what: Name
    owner: Owner | OwnerName | None = None

    def words(self) -> str:
        return spoken("take away", self.count, self.what, spoken("for", self.owner) if self.owner else "")


@frozen
class MakeLike(Node):
    """Such as "make every target like a bucket"."""

    what: Np = field(metadata={"sorts": ("target", "ball", "ring", "body")})
    like: Np

    def words(self) -> str:
        return spoken("make", self.what, "like", self.like)


@frozen
class MakeCourt(Node):
    """Such as "make the court 14 m by 7 m"."""

    length: Quantity
    width: Quantity

    def words(self) -> str:
        return spoken("make the court", self.length, "by", self.width)


@frozen
class ScaleCourt(Node):
    """Such as "make the court 75 % as long"."""

    percent: Quantity
    dimension: str

    def words(self) -> str:
        return spoken("make the court", self.percent, self.dimension)


@frozen
class ScaleKit(Node):
    """Such as "make every target 150 % as big"."""

    what: Np
    percent: Quantity

    def words(self) -> str:
        return spoken("make", self.what, self.percent, "as big")


@frozen
class ScaleArea(Node):
    """Such as "make every strip 150 % as deep"."""

    what: Np
    percent: Quantity

    def words(self) -> str:
        return spoken("make", self.what, self.percent, "as deep")


@frozen
class StandTargets(Node):
    """Such as "make every target stand before the back line of their side"."""

    preposition: str
    where: Np

    def words(self) -> str:
        return spoken("make every target stand", self.preposition, self.where)


@frozen
class AimFrom(Node):
    """Such as "make attempts at the targets from 5 m away"."""

    what: Np
    distance: Quantity

    def words(self) -> str:
        return spoken("make attempts at", self.what, "from", self.distance, "away")


@frozen
class AimInOrder(Node):
    """Such as "make attempts at the targets in order"."""

    what: Np
    order: str

    def words(self) -> str:
        return spoken("make attempts at", self.what, self.order)


@frozen
class DealOut(Node):
    """Such as "deal out every ball": what lies by number in several places is shared evenly among them."""

    what: Np

    def words(self) -> str:
        return spoken("deal out", self.what)


@frozen
class UnevenSides(Node):
    """Such as "make the last side 2 players smaller": the sides are then no longer mirrored."""

    fewer: Quantity

    def words(self) -> str:
        return spoken("make the last side", self.fewer, "players smaller")


@frozen
class TakeAll(Node):
    """Such as "take all from finish": the section is emptied, so that other lines can take its place."""

    text: str

    def words(self) -> str:
        return self.text

    @property
    def section(self) -> str:
        """The section of the game that is emptied."""
        return self.text.rpartition(" ")[2]


@frozen
class TurnSwitch(Node):
    """Such as "turn on "hits count"": a switch of the game."""

    turn: str
    switch: str

    def words(self) -> str:
        return f'{self.turn} "{self.switch}"'


@frozen
class Block(Node):
    """Such as "put in when", "replace in when", "take from when": the lines below go into, or out of, that section.

    With "replace in", each line takes the place of the line about the same thing, if there is one.
    """

    block: str

    def words(self) -> str:
        return self.block

    @property
    def verb(self) -> str:
        """Such as "put in", "replace in" or "take from"."""
        return self.block.rpartition(" ")[0]

    @property
    def section(self) -> str:
        """The section of the game that the lines below belong to."""
        return self.block.rpartition(" ")[2]

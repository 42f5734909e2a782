"""Sentences of the sides, the kit and the set-up: who plays, with what, from where."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Name, Node, Np, Owner, OwnerName, Quantity, detail, listed, spoken


@frozen
class Headcount(Node):
    """Such as "6 to 14 players each"."""

    least: Quantity
    most: Quantity | None
    of: Name
    each: str | None = None

    def words(self) -> str:
        upper = spoken("to", self.most) if self.most else ""
        return spoken(self.least, upper, self.of, self.each)


@frozen
class Sides(Node):
    """Such as "north and south, 6 to 14 players each, mirrored"."""

    names: tuple[Name, ...]
    headcount: Headcount
    options: tuple[str, ...] = ()

    def words(self) -> str:
        return listed(self.names) + detail(self.headcount) + "".join(detail(option) for option in self.options)


@frozen
class AimsFrom(Node):
    """Such as "aims from 3 m"."""

    distance: Quantity

    def words(self) -> str:
        return spoken("aims from", self.distance)


@frozen
class Uses(Node):
    """Such as "uses the yarn ball"."""

    what: Np

    def words(self) -> str:
        return spoken("uses", self.what)


@frozen
class NeverAimedAt(Node):
    """Such as "nobody aims at them"."""

    def words(self) -> str:
        return "nobody aims at them"


RoleDetail = AimsFrom | Uses | NeverAimedAt


@frozen
class Role(Node):
    """Such as "role keeper: 1 to 2 players of each side, aims from 3 m"."""

    name: Name
    headcount: Headcount
    owner: Owner | OwnerName
    details: tuple[RoleDetail, ...] = field(default=(), metadata={"rest": True})

    def words(self) -> str:
        details = "".join(detail(part) for part in self.details)
        return f"role {self.name.words()}: {spoken(self.headcount, 'of', self.owner)}{details}"


@frozen
class SideBySide(Node):
    """Such as "up to 14 duels side by side": so many games in one hall at once."""

    most: Quantity
    what: Name

    def words(self) -> str:
        return spoken("up to", self.most, self.what, "side by side")


@frozen
class OddPupil(Node):
    """Such as "the odd pupil keeps the score": what happens where the class does not divide evenly."""

    does: str

    def words(self) -> str:
        return spoken("the odd pupil", self.does)


@frozen
class Kit(Node):
    """Such as "5 lanterns for each side, like a skittle"; "4 wolves (one wolf)" declares an odd plural.

    A percentage ("150 % as big") makes the thing larger or smaller than what it is like.
    """

    count: Quantity
    name: Name
    singular: Name | None = None
    owner: Owner | OwnerName | None = None
    determiner: str | None = None
    like: Name | None = None
    percent: Quantity | None = None
    parts: Quantity | None = None

    def words(self) -> str:
        one = f"(one {self.singular.words()})" if self.singular else ""
        per = spoken("for", self.owner) if self.owner else ""
        like = detail("like", self.determiner, self.like) if self.like else ""
        big = detail(self.percent, "as big") if self.percent else ""
        parts = detail("of", self.parts, "parts") if self.parts else ""
        return spoken(self.count, self.name, one, per) + like + big + parts


@frozen
class Placing(Node):
    """Such as "lanterns on the back line of their side, evenly spaced"."""

    all_but: str | None
    count: Quantity | None
    what: Np
    lying: str | None
    preposition: str
    where: Np
    spread: str | None = field(default=None)

    def words(self) -> str:
        down = "lying" if self.lying else None
        return spoken(self.all_but, self.count, self.what, down, self.preposition, self.where) + detail(self.spread)


@frozen
class PlacingOnStep(Node):
    """Such as "drift balls on step 4 of the drift track"."""

    what: Np
    step: Quantity
    track: Np

    def words(self) -> str:
        return spoken(self.what, "on step", self.step, "of", self.track)

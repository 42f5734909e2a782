"""Sentences of the sides, the kit and the set-up: who plays, with what, from where."""

from __future__ import annotations

from attrs import field, frozen

from grammar.sentences.base import Name, Node, Np, Owner, OwnerName, Quantity, detail, listed, spoken


@frozen
class Headcount(Node):
    """ "6 to 14 players each"."""

    least: Quantity
    most: Quantity | None
    of: Name
    each: str | None = None

    def words(self) -> str:
        upper = spoken("to", self.most) if self.most else ""
        return spoken(self.least, upper, self.of, self.each)


@frozen
class Sides(Node):
    """ "north and south, 6 to 14 players each, mirrored"."""

    names: tuple[Name, ...]
    headcount: Headcount
    options: tuple[str, ...] = ()

    def words(self) -> str:
        return listed(self.names) + detail(self.headcount) + "".join(detail(option) for option in self.options)


@frozen
class Role(Node):
    """ "role keeper: 1 to 2 players of each side, aims from 3 m"."""

    name: Name
    headcount: Headcount
    owner: Owner | OwnerName
    distance: Quantity | None = None

    def words(self) -> str:
        aims = detail("aims from", self.distance) if self.distance else ""
        return f"role {self.name.words()}: {spoken(self.headcount, 'of', self.owner)}{aims}"


@frozen
class Kit(Node):
    """ "5 lanterns for each side, like a skittle"; "4 wolves (one wolf)" declares an odd plural.

    A percentage ("150 % as big") makes the thing larger or smaller than what it is like.
    """

    count: Quantity
    name: Name
    singular: Name | None = None
    owner: Owner | OwnerName | None = None
    determiner: str | None = None
    like: Name | None = None
    percent: Quantity | None = None

    def words(self) -> str:
        one = f"(one {self.singular.words()})" if self.singular else ""
        per = spoken("for", self.owner) if self.owner else ""
        like = detail("like", self.determiner, self.like) if self.like else ""
        big = detail(self.percent, "as big") if self.percent else ""
        return spoken(self.count, self.name, one, per) + like + big


@frozen
class Placing(Node):
    """ "lanterns on the back line of their side, evenly spaced"."""

    count: Quantity | None
    what: Np
    preposition: str
    where: Np
    spread: str | None = field(default=None)

    def words(self) -> str:
        return spoken(self.count, self.what, self.preposition, self.where) + detail(self.spread)

"""Sentences of a hall: its size, its doors, what stands fixed in it, the lines on its floor."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.base import Name, Node, Quantity, detail, spoken


@frozen
class HallSize(Node):
    """Such as "the hall is 15 m by 12 m": its length, from west to east, and its width."""

    length: Quantity
    width: Quantity

    def words(self) -> str:
        return spoken("the hall is", self.length, "by", self.width)


@frozen
class HallDoor(Node):
    """Such as "door in the south wall, 2 m from its west end, 1.6 m across": the distance is to its nearer post."""

    wall: str
    distance: Quantity
    end: str
    width: Quantity | None = None

    def words(self) -> str:
        wide = f", {self.width.words()} across" if self.width else ""
        return spoken("door in", self.wall) + detail(self.distance, self.end) + wide


@frozen
class AlongWall(Node):
    """Such as "stage along the east wall, 6 m by 2 m, 1.5 m from its south end": long, deep, and where it begins."""

    name: Name
    wall: str
    length: Quantity
    depth: Quantity
    distance: Quantity
    end: str

    def words(self) -> str:
        size = detail(self.length, "by", self.depth)
        return spoken(self.name, "along", self.wall) + size + detail(self.distance, self.end)


@frozen
class FromWalls(Node):
    """Such as "9 m from the west wall and 2 m from the south wall": to the nearer edges."""

    one: Quantity
    one_wall: str
    other: Quantity
    other_wall: str

    def words(self) -> str:
        return spoken(self.one, "from", self.one_wall, "and", self.other, "from", self.other_wall)


@frozen
class OnTheFloor(Node):
    """Such as "post, 10 cm by 10 cm, 9 m from the west wall and 2 m from the south wall": its length comes first."""

    name: Name
    length: Quantity
    width: Quantity
    place: FromWalls

    def words(self) -> str:
        return self.name.words() + detail(self.length, "by", self.width) + detail(self.place)


@frozen
class FloorLines(Node):
    """Such as "lines of a volleyball court, across the hall": in its middle, where it does not say from which walls."""

    determiner: str
    court: Name
    across: str | None = None
    place: FromWalls | None = None

    def words(self) -> str:
        return spoken("lines of", self.determiner, self.court) + detail(self.across) + detail(self.place)

"""The bare court with its sides, and stretches of it.

A region is a rectangle and the way that faces the middle of the court, seen from who stands there.
"""

from __future__ import annotations

from compose.staging.floor.values import Floor, FloorArea, Rectangle
from grammar.core.declared import Cut
from grammar.core.game import Play
from grammar.core.values import SideId
from grammar.frozen import frozen

GAP_M = 0.3  # assumption: a bench or a queue keeps a foot's breadth from the line
QUARTERS = ((0, 0), (1, 1), (0, 1), (1, 0))  # column and row of each of four sides, opposite ones first
APART_M = 0.1  # assumption: the least gap between things of different kinds, and players of different sides


@frozen
class Region:
    """A stretch of floor. `side` is whose it is; `facing` is +1 where the middle lies at greater x, else -1.

    `line` is "" for an area, "across" for a line that runs across the court and "along" for one along it;
    then `up` is +1 where the court lies at greater y, else -1.
    """

    rectangle: Rectangle
    side: SideId | None = None
    facing: int = 1
    line: str = ""
    up: int = 1


@frozen
class Ground:
    """The court with its sides and the areas laid out so far."""

    length_m: float
    width_m: float
    sides: tuple[SideId, ...]
    halved: bool
    areas: tuple[FloorArea, ...] = ()

    @property
    def court(self) -> Rectangle:
        return Rectangle(0.0, 0.0, self.length_m, self.width_m)

    @property
    def quartered(self) -> bool:
        """Whether each of four sides has a quarter: nobody's lies between those of others (an assumption)."""
        return self.halved and len(self.sides) == len(QUARTERS)

    def slice_of(self, side: SideId) -> Rectangle:
        """An equal part of the court along its length: the half, where there are two sides; of four a quarter."""
        order, parts = self.sides.index(side), len(self.sides)
        if self.quartered:
            column, row = QUARTERS[order]
            long, wide = self.length_m / 2, self.width_m / 2
            return Rectangle(column * long, row * wide, (column + 1) * long, (row + 1) * wide)
        each = self.length_m / parts
        return Rectangle(order * each, 0.0, (order + 1) * each, self.width_m)

    def facing(self, side: SideId) -> int:
        """+1 for a side whose part of the court lies before the middle, else -1."""
        return 1 if len(self.sides) == 1 or self.slice_of(side).centre[0] < self.length_m / 2 else -1

    def back_x(self, side: SideId) -> float:
        """Where the back line of a side is."""
        part = self.slice_of(side)
        if not self.halved:
            return 0.0 if self.facing(side) > 0 else self.length_m
        return part.left if self.facing(side) > 0 else part.right

    def front_x(self, side: SideId) -> float:
        """Where the part of a side ends towards the middle."""
        part = self.slice_of(side)
        if not self.halved:
            return self.length_m / 2
        return part.right if self.facing(side) > 0 else part.left

    def across(self, start: float, towards: int, depth_m: float, side: SideId | None = None) -> Rectangle:
        """A strip over the whole width, of a side with a quarter over its own, from x = start on in one direction."""
        end = start + towards * depth_m
        bottom, top = 0.0, self.width_m
        if side is not None and self.quartered:
            own = self.slice_of(side)
            bottom, top = own.bottom, own.top
        return Rectangle(min(start, end), bottom, max(start, end), top)

    def beside(self, left: float, right: float, depth_m: float, side: SideId | None = None) -> Rectangle:
        """A stretch off the court, along its side line at y = 0, or the other one, if a side has its quarter there."""
        bottom = -GAP_M - depth_m
        if side is not None and self.quartered and self.slice_of(side).bottom > 0.0:
            bottom = self.width_m + GAP_M
        return Rectangle(min(left, right), bottom, max(left, right), bottom + depth_m)


def bare_ground(play: Play) -> Ground:
    """The court of a game, without its areas."""
    court = play.court
    return Ground(float(court.length_m), float(court.width_m), play.side_ids, court.cut is Cut.PARTS)


def ground_under(floor: Floor, play: Play) -> Ground:
    """The ground of a floor that is laid out."""
    return Ground(floor.length_m, floor.width_m, play.side_ids, play.court.cut is Cut.PARTS, floor.areas)

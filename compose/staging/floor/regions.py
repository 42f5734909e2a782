"""Where a place of the rules lies on the floor: the built-in places and the named areas, in metres.

A region is a rectangle and the way that faces the middle of the court, seen from who stands there.
"""

from __future__ import annotations

from collections.abc import Sequence

from attrs import evolve, frozen

from compose.staging.floor.values import FloorArea, Rectangle

STRIP_M = 2.0  # assumption: "before" and "behind" a line reach this far
GAP_M = 0.3  # assumption: a bench or a queue keeps a foot's breadth from the line
ACROSS = ("across", "along", "between")


@frozen
class Region:
    """A stretch of floor. `side` is whose end it is; `facing` is +1 where the middle lies at greater x, else -1.

    `line` is "" for an area, "across" for a line that runs across the court and "along" for one along it;
    then `up` is +1 where the court lies at greater y, else -1.
    """

    rectangle: Rectangle
    side: str | None = None
    facing: int = 1
    line: str = ""
    up: int = 1


@frozen
class Ground:
    """The court with its sides and the areas laid out so far."""

    length_m: float
    width_m: float
    sides: tuple[str, ...]
    halved: bool
    areas: tuple[FloorArea, ...] = ()

    @property
    def court(self) -> Rectangle:
        return Rectangle(0.0, 0.0, self.length_m, self.width_m)

    def slice_of(self, side: str) -> Rectangle:
        """An equal part of the court along its length: the half, where there are two sides."""
        order, parts = self.sides.index(side), len(self.sides)
        each = self.length_m / parts
        return Rectangle(order * each, 0.0, (order + 1) * each, self.width_m)

    def facing(self, side: str) -> int:
        """+1 for a side whose part of the court lies before the middle, else -1."""
        return 1 if len(self.sides) == 1 or self.slice_of(side).centre[0] < self.length_m / 2 else -1

    def back_x(self, side: str) -> float:
        """Where the back line of a side is."""
        part = self.slice_of(side)
        if not self.halved:
            return 0.0 if self.facing(side) > 0 else self.length_m
        return part.left if self.facing(side) > 0 else part.right

    def front_x(self, side: str) -> float:
        """Where the half of a side ends towards the middle."""
        part = self.slice_of(side)
        return part.right if self.facing(side) > 0 else part.left


def regions(ground: Ground, place: str, preposition: str, side: str | None, depth_m: float | None) -> list[Region]:
    """Where "preposition place" lies: for one side, or (side None) everywhere it is. Never empty.

    `depth_m` is how deep the stretch shall be; None takes what is usual for the place.
    """
    match place:
        case "half":
            found = [_at_half(ground, name, preposition, depth_m) for name in _whose(ground, side)]
        case "back line" | "wall" if side or len(ground.sides) > 1:
            found = [_at_back(ground, name, preposition, depth_m) for name in _whose(ground, side)]
        case "back line" | "wall":
            found = [_at_end(ground, end, preposition, depth_m) for end in (0, 1)]
        case "side line":
            found = _at_side_lines(ground, preposition, depth_m, side)
        case "middle line":
            found = [_at_middle_line(ground, preposition, depth_m, side)]
        case "middle":
            found = [Region(_square(ground.length_m / 2, ground.width_m / 2, depth_m or STRIP_M, ground.court))]
        case "corner":
            found = [region for region in corners(ground, depth_m or STRIP_M) if side in (None, region.side)]
        case "court":
            found = [_at_court(ground, preposition, depth_m)]
        case _:
            found = _at_area(ground, place, preposition, side, depth_m)
    return found


def _whose(ground: Ground, side: str | None) -> tuple[str, ...]:
    return (side,) if side else ground.sides


def _square(x: float, y: float, size: float, within: Rectangle) -> Rectangle:
    half_x, half_y = min(size, within.length) / 2, min(size, within.width) / 2
    return Rectangle(x - half_x, y - half_y, x + half_x, y + half_y)


def _strip(ground: Ground, start: float, towards: int, depth: float) -> Rectangle:
    """A strip over the whole width, from x = start on in one direction."""
    end = start + towards * depth
    return Rectangle(min(start, end), 0.0, max(start, end), ground.width_m)


def _at_half(ground: Ground, side: str, preposition: str, depth: float | None) -> Region:
    part, facing = ground.slice_of(side), ground.facing(side)
    if preposition == "behind":
        return _at_back(ground, side, preposition, depth)
    if preposition == "beside":
        deep = depth or STRIP_M
        return Region(Rectangle(part.left, -GAP_M - deep, part.right, -GAP_M), side, facing)
    if preposition == "before":
        return Region(_strip(ground, ground.front_x(side), -facing, depth or STRIP_M), side, facing)
    if depth is None:
        return Region(part, side, facing)
    middle = part.centre[0]
    return Region(Rectangle(middle - depth / 2, 0.0, middle + depth / 2, ground.width_m), side, facing)


def _at_back(ground: Ground, side: str, preposition: str, depth: float | None) -> Region:
    if ground.halved and side not in (ground.sides[0], ground.sides[-1]) and preposition in ("behind", "beside"):
        # Behind the back line of a slice between others is another side's floor: beside the court instead.
        part, deep = ground.slice_of(side), depth or STRIP_M
        return Region(Rectangle(part.left, -GAP_M - deep, part.right, -GAP_M), side, ground.facing(side))
    line = Region(_strip(ground, ground.back_x(side), 1, 0.0), side, ground.facing(side), "across")
    return _by_line(ground, line, preposition, depth)


def _at_end(ground: Ground, end: int, preposition: str, depth: float | None) -> Region:
    line = Region(_strip(ground, ground.length_m * end, 1, 0.0), None, -1 if end else 1, "across")
    return _by_line(ground, line, preposition, depth)


def _by_line(ground: Ground, line: Region, preposition: str, depth: float | None) -> Region:
    """The stretch behind a line, before it, or the line itself."""
    x, facing, deep = line.rectangle.left, line.facing, depth or STRIP_M
    if preposition in ("behind", "beside"):
        return evolve(line, rectangle=_strip(ground, x - facing * GAP_M, -facing, deep), line="")
    if preposition == "before" or depth:
        return evolve(line, rectangle=_strip(ground, x, facing, deep), line="")
    return line


def _at_side_lines(ground: Ground, preposition: str, depth: float | None, side: str | None) -> list[Region]:
    part = ground.slice_of(side) if side and ground.halved else ground.court
    facing = ground.facing(side) if side else 1
    outside = preposition in ("behind", "beside")
    deep = (depth or STRIP_M) if outside or depth or preposition == "before" else 0.0
    lows = (-GAP_M - deep, ground.width_m + GAP_M) if outside else (0.0, ground.width_m - deep)
    return [
        Region(Rectangle(part.left, low, part.right, low + deep), side, facing, "" if deep else "along", up)
        for low, up in zip(lows, (1, -1), strict=True)
    ]


def _at_middle_line(ground: Ground, preposition: str, depth: float | None, side: str | None) -> Region:
    middle = ground.length_m / 2
    if preposition in ("before", "behind", "beside") and side:
        facing = ground.facing(side)
        start = ground.front_x(side) if ground.halved else middle
        return Region(_strip(ground, start, -facing, depth or STRIP_M), side, facing)
    deep = depth or 0.0
    rectangle = Rectangle(middle - deep / 2, 0.0, middle + deep / 2, ground.width_m)
    return Region(rectangle, None, 1, "" if deep else "across")


def corners(ground: Ground, size: float) -> list[Region]:
    """The four corners, opposite ones first; each belongs to the side whose end it is, or one to each of 3 or 4."""
    long, wide = min(size, ground.length_m / 2), min(size, ground.width_m / 2)
    right, top = ground.length_m - long, ground.width_m - wide
    spots = [(0.0, 0.0), (right, top), (0.0, top), (right, 0.0)]
    found = []
    for order, (x, y) in enumerate(spots):
        facing = 1 if x == 0.0 else -1
        owner: str | None = None
        if len(ground.sides) > 2:
            owner = ground.sides[order] if order < len(ground.sides) else None
        elif len(ground.sides) == 2:
            owner = ground.sides[0 if facing > 0 else 1]
        found.append(Region(Rectangle(x, y, x + long, y + wide), owner, facing))
    return found


def _at_court(ground: Ground, preposition: str, depth: float | None) -> Region:
    deep = depth or STRIP_M
    if preposition == "behind":
        return Region(_strip(ground, ground.length_m + GAP_M, 1, deep), None, -1)
    if preposition == "beside":
        return Region(Rectangle(0.0, -GAP_M - deep, ground.length_m, -GAP_M))
    return Region(ground.court)


def _at_area(ground: Ground, place: str, preposition: str, side: str | None, depth: float | None) -> list[Region]:
    named = [area for area in ground.areas if area.name == place]
    areas = [area for area in named if side in (None, area.owner) or area.owner is None] or named
    found = []
    for area in areas:
        box = area.rectangle
        facing = 1 if box.centre[0] <= ground.length_m / 2 else -1
        deep = depth or STRIP_M
        if preposition == "behind":
            edge = box.left if facing > 0 else box.right
            box = _between(edge, edge - facing * deep, box)
        elif preposition == "before":
            edge = box.right if facing > 0 else box.left
            box = _between(edge, edge + facing * deep, box)
        elif preposition == "beside":
            box = Rectangle(box.left, box.top, box.right, box.top + deep)
        found.append(Region(box, area.owner, facing))
    return found or [Region(ground.court)]


def _between(one: float, other: float, box: Rectangle) -> Rectangle:
    return Rectangle(min(one, other), box.bottom, max(one, other), box.top)


def outermost(rectangle: Rectangle, taken: Sequence[Rectangle], court: Rectangle) -> Rectangle:
    """The rectangle moved outwards, away from the court, until it is clear of those taken; inside it stays."""
    if rectangle.overlaps(court):
        return rectangle
    by_x = (rectangle.left >= court.right) - (rectangle.right <= court.left)
    by_y = 0 if by_x else (rectangle.bottom >= court.top) - (rectangle.top <= court.bottom)
    for box in sorted(taken, key=lambda other: by_x * other.centre[0] + by_y * other.centre[1]):
        if rectangle.overlaps(box):
            out_x = (box.right - rectangle.left if by_x > 0 else box.left - rectangle.right) if by_x else 0.0
            out_y = (box.top - rectangle.bottom if by_y > 0 else box.bottom - rectangle.top) if by_y else 0.0
            rectangle = rectangle.moved(out_x + by_x * GAP_M, out_y + by_y * GAP_M)
    return rectangle

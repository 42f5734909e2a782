"""Where a spot of the core lies on the floor, in metres: the landmarks of the court and the named areas."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from attrs import evolve

from compose.staging.floor.ground import GAP_M, Ground, Region
from compose.staging.floor.values import Rectangle
from grammar.core.values import ONE_OF_SEVERAL, SHARED, AreaId, Landmark, Part, SideId, Spot

STRIP_M = 2.0  # assumption: "before", "behind" and "beside" a line reach this far
OUTSIDE = (Part.BEHIND, Part.BESIDE)


def regions(
    ground: Ground, spot: Spot, depth_m: float | None = None, seen_from: SideId | None = None
) -> tuple[Region, ...]:
    """Where a spot lies, in one stretch or several. Never empty.

    `depth_m` is how deep the stretch shall be; None takes what is usual for the place. What is shared but has
    two ways to look at it (before the middle line) is that of the side from which it is seen.
    """
    if not isinstance(spot.of, Landmark):
        return tuple(_by_areas(ground, spot.of, spot, depth_m)) or (Region(ground.court),)
    if spot.owner is SHARED and spot.of in ONE_OF_SEVERAL:
        return (_one_for_all(ground, spot, depth_m),)
    owners = (spot.owner,) if isinstance(spot.owner, SideId) else ground.sides
    match spot.of:
        case Landmark.HALF | Landmark.HANDS | Landmark.FROZEN | Landmark.INSIDE:
            found = [_at_half(ground, side, spot.part, depth_m) for side in owners]
        case Landmark.BACK_LINE | Landmark.WALL:
            found = [region for side in owners for region in _at_back(ground, side, spot.part, depth_m)]
        case Landmark.SIDE_LINE:
            found = [region for side in owners for region in _at_side_lines(ground, side, spot.part, depth_m)]
        case Landmark.OTHER_END:
            found = [evolve(_at_back(ground, ground.sides[0], spot.part, depth_m)[0], side=None)]
        case Landmark.CORNER:
            found = [region for side in owners for region in _at_corners(ground, side, spot.part, depth_m or STRIP_M)]
        case Landmark.MIDDLE_LINE | Landmark.MIDDLE:
            found = [_at_middle(ground, spot, depth_m, seen_from)]
        case Landmark.COURT:
            found = [_at_court(ground, spot.part, depth_m)]
        case _:
            assert_never(spot.of)
    return tuple(found)


def _one_for_all(ground: Ground, spot: Spot, depth_m: float | None) -> Region:
    """One line or corner of several, for all: the last corner, which of three sides nobody has, or the last side's
    end; of the side lines the one where queues and benches are, over the whole court."""
    last = ground.sides[-1]
    match spot.of:
        case Landmark.SIDE_LINE:
            found = next(_at_side_lines(evolve(ground, halved=False), last, spot.part, depth_m))
        case Landmark.CORNER:
            (found,) = _by_corners([corners(ground, depth_m or STRIP_M)[-1]], spot.part)
        case _:
            found = _at_back(ground, last, spot.part, depth_m)[-1]
    return evolve(found, side=None)


def everywhere(ground: Ground, spot: Spot, depth_m: float) -> Iterator[Region]:
    """All corners of the court, or both its side lines, for all."""
    last = ground.sides[-1]
    if spot.of is Landmark.CORNER:
        found = _by_corners(corners(ground, depth_m), spot.part)
    else:
        found = _at_side_lines(evolve(ground, halved=False), last, spot.part, depth_m)
    return (evolve(each, side=None) for each in found)


def _square(x: float, y: float, size: float, within: Rectangle) -> Rectangle:
    half_x, half_y = min(size, within.length) / 2, min(size, within.width) / 2
    return Rectangle(x - half_x, y - half_y, x + half_x, y + half_y)


def _at_half(ground: Ground, side: SideId, part: Part, depth_m: float | None) -> Region:
    half, facing = ground.slice_of(side), ground.facing(side)
    deep = depth_m or STRIP_M
    match part:
        case Part.BEHIND:
            return _at_back(ground, side, part, depth_m)[0]
        case Part.BESIDE:
            return Region(ground.beside(half.left, half.right, deep, side), side, facing)
        case Part.BEFORE:
            return Region(ground.across(ground.front_x(side), -facing, deep, side), side, facing)
    if depth_m is None:
        return Region(half, side, facing)
    return Region(ground.across(half.centre[0] - deep / 2, 1, deep, side), side, facing)


def _at_back(ground: Ground, side: SideId, part: Part, depth_m: float | None) -> tuple[Region, ...]:
    """The end of a side; who plays alone has both ends."""
    between = ground.halved and not ground.quartered and side not in (ground.sides[0], ground.sides[-1])
    if between and part in OUTSIDE:
        # Behind the back line of a slice between others is another side's floor: beside the court instead.
        half = ground.slice_of(side)
        return (Region(ground.beside(half.left, half.right, depth_m or STRIP_M), side, ground.facing(side)),)
    own = Region(ground.across(ground.back_x(side), 1, 0.0, side), side, ground.facing(side), "across")
    if len(ground.sides) > 1:
        return (_by_line(ground, own, part, depth_m),)
    far = evolve(own, rectangle=ground.across(ground.length_m, 1, 0.0), facing=-1)
    return _by_line(ground, own, part, depth_m), _by_line(ground, far, part, depth_m)


def _by_line(ground: Ground, line: Region, part: Part, depth_m: float | None) -> Region:
    """The stretch behind a line, before it, at its end, or the line itself (as broad as is asked)."""
    x, facing, deep = line.rectangle.left, line.facing, depth_m or STRIP_M
    match part:
        case Part.BEHIND:
            box = ground.across(x - facing * GAP_M, -facing, deep, line.side)
        case Part.BESIDE:
            box = ground.beside(x, x + facing * STRIP_M, deep, line.side)
        case Part.AT if depth_m is None:
            return line
        case Part.AT:
            box = ground.across(x - deep / 2, 1, deep, line.side)
        case _:
            box = ground.across(x, facing, deep, line.side)
    return evolve(line, rectangle=box, line="")


def _at_side_lines(ground: Ground, side: SideId, part: Part, depth_m: float | None) -> Iterator[Region]:
    """Both side lines, as far as they are a side's own: of a quarter the one at which it lies."""
    half = ground.slice_of(side) if ground.halved else ground.court
    is_line = part is Part.AT and depth_m is None
    deep = 0.0 if is_line else depth_m or STRIP_M
    low = -GAP_M - deep if part in OUTSIDE else -deep / 2 if part is Part.AT else 0.0
    lines: tuple[tuple[float, int], ...] = ((low, 1), (ground.width_m - low - deep, -1))
    if ground.quartered:
        lines = lines[:1] if half.bottom <= 0.0 else lines[1:]
    for bottom, up in lines:
        box = Rectangle(half.left, bottom, half.right, bottom + deep)
        yield Region(box, side, ground.facing(side), "along" if is_line else "", up)


def _at_middle(ground: Ground, spot: Spot, depth_m: float | None, seen_from: SideId | None) -> Region:
    middle, deep = ground.length_m / 2, depth_m or STRIP_M
    match spot.part:
        case Part.BEFORE | Part.BEHIND if seen_from is not None:
            facing = ground.facing(seen_from)
            return Region(ground.across(ground.front_x(seen_from), -facing, deep, seen_from), seen_from, facing)
        case Part.BESIDE:
            return Region(ground.beside(middle - STRIP_M, middle + STRIP_M, deep))
        case Part.AT | Part.AROUND if spot.of is Landmark.MIDDLE:
            return Region(_square(middle, ground.width_m / 2, deep, ground.court))
        case Part.AT if depth_m is None:
            return Region(ground.across(middle, 1, 0.0), None, 1, "across")
    return Region(ground.across(middle - deep / 2, 1, deep))


def _at_corners(ground: Ground, side: SideId, part: Part, size_m: float) -> Iterator[Region]:
    """The corners at the end of a side; of three or four sides each has one, who plays alone has all."""
    alone, few = len(ground.sides) == 1, len(ground.sides) <= 4
    own = [region for region in corners(ground, size_m) if alone or region.side == side]
    own = own if alone else sorted(own, key=lambda region: -region.up)  # the ends of a court mirror each other
    yield from _by_corners(own if few else [Region(ground.slice_of(side), side, ground.facing(side))], part)


def _by_corners(found: list[Region], part: Part) -> Iterator[Region]:
    """Corners, or what lies before, behind or beside each."""
    for region in found:
        box = region.rectangle
        match part:
            case Part.BEFORE:
                box = box.moved(region.facing * box.length, 0.0)
            case Part.BEHIND:
                box = box.moved(-region.facing * (box.length + GAP_M), 0.0)
            case Part.BESIDE:
                box = box.moved(0.0, -region.up * (box.width + GAP_M))
        yield evolve(region, rectangle=box)


def corners(ground: Ground, size_m: float) -> list[Region]:
    """The four corners, opposite ones first; each belongs to the side whose end it is, or one to each of 3 or 4."""
    long, wide = min(size_m, ground.length_m / 2), min(size_m, ground.width_m / 2)
    right, top = ground.length_m - long, ground.width_m - wide
    found = []
    for order, (x, y) in enumerate([(0.0, 0.0), (right, top), (0.0, top), (right, 0.0)]):
        facing = 1 if x == 0.0 else -1
        owner: SideId | None = None
        if len(ground.sides) > 2:
            owner = ground.sides[order] if order < len(ground.sides) else None
        elif len(ground.sides) == 2:
            owner = ground.sides[0 if facing > 0 else 1]
        found.append(Region(Rectangle(x, y, x + long, y + wide), owner, facing, "", 1 if y == 0.0 else -1))
    return found


def _at_court(ground: Ground, part: Part, depth_m: float | None) -> Region:
    deep = depth_m or STRIP_M
    match part:
        case Part.BEHIND:
            return Region(ground.across(ground.length_m + GAP_M, 1, deep), None, -1)
        case Part.BESIDE:
            return Region(ground.beside(0.0, ground.length_m, deep))
        case Part.ACROSS:
            return Region(ground.across(ground.length_m / 2 - deep / 2, 1, deep))
    if depth_m is None:
        return Region(ground.court)
    return Region(_square(*ground.court.centre, deep, ground.court))


def _by_areas(ground: Ground, of: AreaId, spot: Spot, depth_m: float | None) -> Iterator[Region]:
    owner = spot.owner if isinstance(spot.owner, SideId) else None
    for area in ground.areas:
        if (area.name, area.owner) != (of.key, owner.key if owner else None):
            continue
        box = area.rectangle
        facing = 1 if box.centre[0] <= ground.length_m / 2 else -1
        deep = depth_m or STRIP_M
        near, far = (box.right, box.left) if facing > 0 else (box.left, box.right)
        match spot.part:
            case Part.BEHIND:
                box = _between(far, far - facing * deep, box)
            case Part.BEFORE:
                box = _between(near, near + facing * deep, box)
            case Part.BESIDE:
                box = Rectangle(box.left, box.top, box.right, box.top + deep)
            case Part.AROUND:
                box = box.grown(deep)
        yield Region(box, owner, facing)


def _between(one: float, other: float, box: Rectangle) -> Rectangle:
    return Rectangle(min(one, other), box.bottom, max(one, other), box.top)

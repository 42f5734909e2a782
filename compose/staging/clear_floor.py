"""The clear floor of a hall: the rectangles between its walls and what stands fixed in it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations, pairwise
from math import hypot

from compose.staging.floor.values import Rectangle
from library import Hall


def walls(hall: Hall) -> Rectangle:
    """The hall's floor from wall to wall, in its metres."""
    return Rectangle(0.0, 0.0, hall.length_m.usual, hall.width_m.usual)


def fixed_boxes(hall: Hall) -> tuple[Rectangle, ...]:
    """What stands fixed in a hall, each from the hall's south-west corner, in the order of the hall's own list."""
    fixed = hall.obstacles
    return tuple(Rectangle(each.x_m, each.y_m, each.x_m + each.length_m, each.y_m + each.width_m) for each in fixed)


def clear_floors(hall: Hall) -> tuple[Rectangle, ...]:
    """All rectangles of the hall's floor that nothing stands on and that cannot be made larger, the largest first;
    in the hall's metres."""
    return _clear(walls(hall), fixed_boxes(hall))


def apart_m(one: Rectangle, other: Rectangle) -> float:
    """How far apart two rectangles are, 0 where they touch; where they share floor, how deep, below 0."""
    along = min(one.right, other.right) - max(one.left, other.left)
    across = min(one.top, other.top) - max(one.bottom, other.bottom)
    return -min(along, across) if min(along, across) > 0 else hypot(min(0.0, along), min(0.0, across))


@lru_cache(maxsize=64)
def _clear(walls: Rectangle, fixed: tuple[Rectangle, ...]) -> tuple[Rectangle, ...]:
    found = sorted(dict.fromkeys(_strips(walls, fixed)), key=lambda each: -each.length * each.width)
    largest = list[Rectangle]()
    for each in found:
        if not any(_within(each, other) for other in largest):
            largest.append(each)
    return tuple(largest)


def _strips(walls: Rectangle, fixed: tuple[Rectangle, ...]) -> Iterator[Rectangle]:
    """Between each two edges along the hall, the floor between what stands there."""
    edges = {walls.left, walls.right, *(x for each in fixed for x in (each.left, each.right))}
    for left, right in combinations(sorted(x for x in edges if walls.left <= x <= walls.right), 2):
        between = (each for each in fixed if each.left < right and left < each.right)
        ends = [(walls.bottom, walls.bottom), *sorted((each.bottom, each.top) for each in between)]
        reached = walls.bottom
        for (_, top), (bottom, _) in pairwise([*ends, (walls.top, walls.top)]):
            reached = max(reached, top)
            if reached < bottom:
                yield Rectangle(left, reached, right, bottom)


def _within(one: Rectangle, other: Rectangle) -> bool:
    along = other.left <= one.left and one.right <= other.right
    return along and other.bottom <= one.bottom and one.top <= other.top

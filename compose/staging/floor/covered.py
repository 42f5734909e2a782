"""How much floor lies under rectangles, and how much of some floor is left beside others; in square metres."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from compose.staging.floor.values import Rectangle


def covered_m2(floors: Iterable[Rectangle]) -> float:
    """How much floor lies under rectangles that may lie over one another, once each."""
    left = tuple(floors)
    across = sorted({x for each in left for x in (each.left, each.right)})
    total = 0.0
    for start, end in pairwise(across):
        here = sorted((each.bottom, each.top) for each in left if each.left <= start and end <= each.right)
        reached = float("-inf")
        for bottom, top in here:
            total += (end - start) * max(0.0, top - max(bottom, reached))
            reached = max(reached, top)
    return total


def left_free_m2(floors: Iterable[Rectangle], taken: Iterable[Rectangle]) -> float:
    """How much of some floors is left beside what takes floor, once each."""
    whole, every = tuple(floors), tuple(taken)
    shared = (part for floor in whole for each in every if (part := common(floor, each)) is not None)
    return covered_m2(whole) - covered_m2(shared)


def common(one: Rectangle, other: Rectangle) -> Rectangle | None:
    """What two rectangles share; None where they lie apart."""
    left, right = max(one.left, other.left), min(one.right, other.right)
    bottom, top = max(one.bottom, other.bottom), min(one.top, other.top)
    return Rectangle(left, bottom, right, top) if left <= right and bottom <= top else None

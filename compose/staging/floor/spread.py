"""How things are spread over a region: the points of a row, a ring, a zigzag, a triangle, a cluster."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from math import ceil, cos, hypot, pi, sin, sqrt

from attrs import evolve

from compose.staging.floor.ground import Region
from compose.staging.floor.values import THING_DEPTH_M, Rectangle
from grammar.core.values import Spread

Point = tuple[float, float]
ZIGZAG_M = 1.0  # assumption: a staggered row steps back by this much where there is room
NEAR_STEP_M = 0.125  # our choice: how finely a free place is sought


def spread(region: Region, count: int, size_m: float, gap_m: float, how: Spread | None) -> tuple[list[Point], float]:
    """Where `count` round things of `size_m` are wanted, `gap_m` apart, and how many metres are missing.

    The points lie inside the region as far as it has room; with 0 missing they keep their gap.
    """
    if count < 1:
        return [], 0.0
    if region.facing < 0:
        # Seen from the other end everything is the same: mirrored sides get mirrored places.
        box = region.rectangle
        points, missing = spread(evolve(region, facing=1), count, size_m, gap_m, how)
        return [(box.left + box.right - x, y) for x, y in points], missing
    pattern = PATTERNS[how] if how else _evenly
    return pattern(region, count, size_m, gap_m)


def room(region: Region, size_m: float, depth_m: float, court: Rectangle) -> Rectangle | None:
    """Where a thing of that size may have its middle, or None where it does not go in.

    `depth_m` is its size along the court. On a line the thing stands on the court's side, and counts as at
    least 0.3 m deep, so that distances to small things do not hang on how small they are.
    """
    box, half, deep = region.rectangle, size_m / 2, max(depth_m, THING_DEPTH_M) / 2
    if region.line == "across":
        x = box.centre[0]
        if min(x - court.left, court.right - x) < deep:
            x = court.left + deep if x < court.centre[0] else court.right - deep
        return Rectangle(x, min(box.bottom + half, box.centre[1]), x, max(box.top - half, box.centre[1]))
    if region.line == "along":
        deep = max(half, deep)
        y = court.bottom + deep if region.up > 0 else court.top - deep
        return Rectangle(min(box.left + half, box.centre[0]), y, max(box.right - half, box.centre[0]), y)
    shrunk = Rectangle(box.left + depth_m / 2, box.bottom + half, box.right - depth_m / 2, box.top - half)
    return shrunk if shrunk.length >= 0 and shrunk.width >= 0 else None


def _cells(low: float, high: float, count: int, size: float, gap: float) -> list[float]:
    """The middles of `count` equal parts; where that is too tight, from rim to rim."""
    if count * (size + gap) <= high - low or count == 1:
        return [low + (high - low) * (2 * order + 1) / (2 * count) for order in range(count)]
    first, last = low + size / 2, high - size / 2
    return [first + (last - first) * order / (count - 1) for order in range(count)]


def _taken(count: int, size: float, gap: float) -> float:
    """How long a row is from rim to rim, in metres."""
    return count * size + max(count - 1, 0) * gap


def _evenly(region: Region, count: int, size: float, gap: float) -> tuple[list[Point], float]:
    box, long = region.rectangle, _taken(count, size, gap)
    if region.line == "along":
        row = [(x, box.bottom) for x in _cells(box.left, box.right, count, size, gap)]
        return row, max(0.0, long - box.length)
    if region.line == "across":
        row = [(box.left, y) for y in _cells(box.bottom, box.top, count, size, gap)]
        return row, max(0.0, long - box.width)
    columns = _columns(box, count, size, gap)
    missing = _missing(box, count, columns, size, gap)
    return _grid(box, count, columns, size, gap), missing


def _missing(box: Rectangle, count: int, columns: int, size: float, gap: float) -> float:
    rows = ceil(count / columns)
    return max(0.0, _taken(columns, size, gap) - box.length, _taken(rows, size, gap) - box.width)


def _columns(box: Rectangle, count: int, size: float, gap: float) -> int:
    """How many columns (along x) make the roomiest cells; ties go to fewer."""

    def roominess(columns: int) -> float:
        room_each = min(box.length / columns, box.width / ceil(count / columns))
        return round(room_each - 1000 * _missing(box, count, columns, size, gap), 9)

    return max(range(1, count + 1), key=lambda columns: (roominess(columns), -columns))


def _grid(box: Rectangle, count: int, columns: int, size: float, gap: float) -> list[Point]:
    points: list[Point] = []
    left = count
    for order, x in enumerate(_cells(box.left, box.right, columns, size, gap)):
        here = ceil(left / (columns - order))
        points.extend((x, y) for y in _cells(box.bottom, box.top, here, size, gap))
        left -= here
    return points


def _ring(region: Region, count: int, size: float, gap: float) -> tuple[list[Point], float]:
    if count < 3:
        return _evenly(region, count, size, gap)
    box, pitch = region.rectangle, size + gap
    if region.line:
        inward = 1 if region.line == "across" else region.up
        deep = max(2.0, pitch * count / 2)
        box = _deepened(region, inward, deep)
    needed = pitch / (2 * sin(pi / count))
    most = min(box.length, box.width) / 2 - size / 2
    radius = max(min(most, max(needed, 0.35 * min(box.length, box.width))), 0.0)
    x, y = box.centre
    points = []
    for order in range(count):
        turn = 2 * pi * order / count
        points.append((x - radius * cos(turn), y + radius * sin(turn)))
    return points, max(0.0, 2 * (needed - most))


def _deepened(region: Region, inward: int, deep: float) -> Rectangle:
    """A line made into a strip on the court's side."""
    box = region.rectangle
    if region.line == "across":
        ends = sorted((box.left, box.left + inward * deep))
        return Rectangle(ends[0], box.bottom, ends[1], box.top)
    ends = sorted((box.bottom, box.bottom + inward * deep))
    return Rectangle(box.left, ends[0], box.right, ends[1])


def _staggered(region: Region, count: int, size: float, gap: float) -> tuple[list[Point], float]:
    """Evenly along the longer way, every other one a step back (on a line: a step into the court)."""
    box = region.rectangle
    upright = region.line == "across" or (not region.line and box.width >= box.length)
    low, high = (box.bottom, box.top) if upright else (box.left, box.right)
    long, deep = (box.width, box.length) if upright else (box.length, box.width)
    step = ZIGZAG_M if region.line else max(0.0, min(ZIGZAG_M, (deep - size) / 2))
    beside = sqrt(max((size + gap) ** 2 - step**2, ((size + gap) / 2) ** 2))
    # Two that stand a step apart may be nearer to each other along the row than two in one line.
    along = _cells(low, high, count, size, max(0.0, beside - size))
    inward = 1 if upright else region.up
    start = (
        (box.left, box.bottom)
        if region.line
        else ((box.centre[0] - inward * step / 2, 0.0) if upright else (0.0, box.centre[1] - inward * step / 2))
    )
    points = []
    for order, place in enumerate(along):
        off = inward * step * (order % 2)
        points.append((start[0] + off, place) if upright else (place, start[1] + off))
    return points, max(0.0, (count - 1) * beside + size - long)


def _triangle(region: Region, count: int, size: float, gap: float) -> tuple[list[Point], float]:
    """Rows of 1, 2, 3 ... on equal sides, the point towards the middle of the court."""
    box, pitch = region.rectangle, size + max(gap, 0.2)
    rows = ceil((sqrt(8 * count + 1) - 1) / 2)
    deep = (rows - 1) * pitch * sqrt(3) / 2
    if region.line == "along":
        return _close(region, count, size, gap)
    x, y = box.centre
    base = box.left if region.line else x - deep / 2
    points: list[Point] = []
    for row in range(rows):
        many = min(row + 1, count - len(points))
        out = (rows - 1 - row) * pitch * sqrt(3) / 2
        # A last row that is not full keeps to its cells, or it would come too near the row before.
        skipped = (row + 1 - many) // 2
        ys = (y + (order + skipped - row / 2) * pitch for order in range(many))
        points.extend((base + out, place) for place in ys)
    room_deep = deep + size if region.line else box.length
    return points, max(0.0, (rows - 1) * pitch + size - box.width, deep + size - room_deep)


def _close(region: Region, count: int, size: float, gap: float) -> tuple[list[Point], float]:
    """A cluster around the middle of the region, nearest cells first; on a line a row."""
    box, pitch = region.rectangle, size + gap
    x, y = box.centre
    if region.line:
        steps = [(order - (count - 1) / 2) * pitch for order in range(count)]
        long = box.width if region.line == "across" else box.length
        points = [(x, y + by) if region.line == "across" else (x + by, y) for by in steps]
        return points, max(0.0, _taken(count, size, gap) - long)
    reach = ceil(sqrt(count)) + 1
    cells = [(column * pitch, row * pitch) for column in range(-reach, reach + 1) for row in range(-reach, reach + 1)]
    fitting = [cell for cell in cells if box.grown(-size / 2).holds(x + cell[0], y + cell[1])]
    chosen = sorted(fitting, key=lambda cell: (round(hypot(*cell), 9), cell))[:count]
    if len(chosen) < count:
        return _evenly(region, count, size, gap)
    return [(x + column, y + row) for column, row in chosen], 0.0


def tries(point: tuple[float, float], bounds: Rectangle, facing: int) -> Iterator[tuple[float, float]]:
    """The wanted point, then the points around it, ring by ring, that lie within the bounds."""
    x, y = bounds.nearest(*point)
    yield x, y
    step = NEAR_STEP_M
    for ring in range(1, ceil(max(bounds.length, bounds.width) / step) + 1):
        for by_x, by_y in _around(ring):
            try_x, try_y = x + facing * by_x * step, y + by_y * step
            if bounds.holds(try_x, try_y):
                yield try_x, try_y


@cache
def _around(ring: int) -> tuple[tuple[int, int], ...]:
    """The cells of a square ring, nearest to the middle first, towards greater y before lesser."""
    cells = [(across, along) for across in range(-ring, ring + 1) for along in (-ring, ring)]
    cells += [(across, along) for along in range(-ring + 1, ring) for across in (-ring, ring)]
    return tuple(sorted(cells, key=lambda cell: (cell[0] ** 2 + cell[1] ** 2, abs(cell[0]), -cell[1], cell[0])))


PATTERNS = {
    Spread.EVENLY: _evenly,
    Spread.RING: _ring,
    Spread.STAGGERED: _staggered,
    Spread.TRIANGLE: _triangle,
    Spread.CLOSE: _close,
}

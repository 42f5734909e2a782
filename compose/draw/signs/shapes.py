"""What a drawing is made of: shapes as data, in metres, y upwards. Renderers only turn them into their format.

Later shapes lie over earlier ones. Widths of strokes and sizes of letters are in metres too, so that a
drawing looks the same at every scale.
"""

from __future__ import annotations

from compose.staging.floor.values import Rectangle
from grammar.frozen import evolve, frozen

Point = tuple[float, float]


@frozen
class Ink:
    """How a shape is painted; colours as "#rrggbb" or None for none. `dash` is (on, off) in metres."""

    fill: str | None = None
    stroke: str | None = None
    width_m: float = 0.0
    dash: tuple[float, float] | None = None


@frozen
class Polygon:
    """A closed outline."""

    points: tuple[Point, ...]
    ink: Ink


@frozen
class Disc:
    """A circle."""

    x: float
    y: float
    radius: float
    ink: Ink


@frozen
class Lines:
    """Open lines of one ink, each a run of points."""

    runs: tuple[tuple[Point, ...], ...]
    ink: Ink


@frozen
class Label:
    """Words on the drawing; (x, y) is on the base line of the letters.

    `anchor` is "start", "middle" or "end"; `turned` is in degrees, anticlockwise; `halo` is the colour of
    a rim around the letters that keeps them legible over lines, or None.
    """

    x: float
    y: float
    text: str
    size_m: float
    colour: str
    anchor: str = "start"
    bold: bool = False
    turned: float = 0.0
    halo: str | None = None


Shape = Polygon | Disc | Lines | Label


@frozen
class Drawing:
    """Shapes within a box, with a title and a description for those who cannot see it."""

    title: str
    description: str
    box: Rectangle
    shapes: tuple[Shape, ...]


def rectangle(box: Rectangle, ink: Ink) -> Polygon:
    """A rectangle as a polygon."""
    return Polygon(((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top)), ink)


def hatch(box: Rectangle, step: float, ink: Ink, rising: bool = True) -> Lines:
    """Slanting lines over a rectangle, cut off at its edges; `step` metres apart along x."""
    runs = []
    high, long = box.width, box.length
    offset = step / 2 - high
    while offset < long:
        start, end = max(0.0, offset), min(long, offset + high)
        if end > start:
            low, top = box.bottom + start - offset, box.bottom + end - offset
            if not rising:
                low, top = box.bottom + box.top - low, box.bottom + box.top - top
            runs.append(((box.left + start, low), (box.left + end, top)))
        offset += step
    return Lines(tuple(runs), ink)


def dashed(box: Rectangle, step: float, ink: Ink) -> Lines:
    """Short level strokes over a rectangle, every other row set off by half a step."""
    rows, columns = max(1, round(box.width / step)), max(1, round(box.length / step))
    wide = box.length / columns
    runs = []
    for row in range(rows):
        y = box.bottom + box.width * (row + 0.5) / rows
        for column in range(columns):
            x = box.left + wide * (column + (0.25 if row % 2 else 0.75))
            runs.append(((x - 0.14 * wide, y), (x + 0.14 * wide, y)))
    return Lines(tuple(runs), ink)


def arrow(start: Point, end: Point, head_m: float, ink: Ink) -> tuple[Shape, ...]:
    """A line with a filled head at its end."""
    along = (end[0] - start[0], end[1] - start[1])
    length = (along[0] ** 2 + along[1] ** 2) ** 0.5
    if length <= head_m:
        return (Lines(((start, end),), ink),)
    unit = (along[0] / length, along[1] / length)
    neck = (end[0] - unit[0] * head_m, end[1] - unit[1] * head_m)
    side = (-unit[1] * head_m * 0.38, unit[0] * head_m * 0.38)
    head = Polygon(
        (end, (neck[0] + side[0], neck[1] + side[1]), (neck[0] - side[0], neck[1] - side[1])), Ink(fill=ink.stroke)
    )
    return Lines(((start, neck),), ink), head


def moved(shape: Shape, by_x: float, by_y: float) -> Shape:
    """The same shape elsewhere."""
    match shape:
        case Polygon():
            return evolve(shape, points=tuple((x + by_x, y + by_y) for x, y in shape.points))
        case Lines():
            return evolve(shape, runs=tuple(tuple((x + by_x, y + by_y) for x, y in run) for run in shape.runs))
        case Disc() | Label():
            return evolve(shape, x=shape.x + by_x, y=shape.y + by_y)


def scaled(shape: Shape, by: float) -> Shape:
    """The same shape so many times as large, seen from the origin."""
    match shape:
        case Polygon():
            return evolve(shape, points=tuple((x * by, y * by) for x, y in shape.points), ink=_scaled(shape.ink, by))
        case Lines():
            runs = tuple(tuple((x * by, y * by) for x, y in run) for run in shape.runs)
            return evolve(shape, runs=runs, ink=_scaled(shape.ink, by))
        case Disc():
            return Disc(shape.x * by, shape.y * by, shape.radius * by, _scaled(shape.ink, by))
        case Label():
            return evolve(shape, x=shape.x * by, y=shape.y * by, size_m=shape.size_m * by)


def _scaled(ink: Ink, by: float) -> Ink:
    dash = (ink.dash[0] * by, ink.dash[1] * by) if ink.dash else None
    return evolve(ink, width_m=ink.width_m * by, dash=dash)

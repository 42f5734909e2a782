"""The least clear floor on each of the four ways out of the court, with its figure."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.draw.plan.hall import HallSeen
from compose.draw.plan.sheet import Sheet
from compose.draw.plan.throws import clear_metres
from compose.draw.signs.palette import DARK, HALL, MIDDLE
from compose.draw.signs.shapes import Ink, Label, Lines, Point
from compose.staging.floor.values import Floor, Rectangle
from grammar.frozen import frozen


def draw_run_off(sheet: Sheet, seen: HallSeen) -> None:
    """The least clear floor on each of the four ways out, measured from the outermost thing on that way, where its
    figure covers least."""
    for way in _ways(sheet.floor, seen):
        tick, size = 0.5 * sheet.unit, 0.8 * sheet.text_m
        figure, clear = clear_metres(way.clear_m, sheet.wording), way.clear_m
        labels = {label: place for place in way.places for label in _figures(way, place, figure, size)}
        label = sheet.clearings.place(labels, 0.1 * size) if clear > 1.1 * size else None
        start, end = way.line(labels[label] if label else way.place)
        ticks = [
            ((x - tick, y), (x + tick, y)) if way.upright else ((x, y - tick), (x, y + tick)) for x, y in (start, end)
        ]
        sheet.shapes.append(Lines(((start, end), *ticks), Ink(stroke=MIDDLE, width_m=0.15 * sheet.unit)))
        sheet.clearings.take(Rectangle(*start, *start).joined(Rectangle(*end, *end)))
        if label:
            sheet.shapes.append(label)


def _figures(way: Way, place: float, figure: str, size: float) -> Iterator[Label]:
    """Where the figure may stand at the line that is drawn at a place: behind or before it, above or below; in its
    middle or nearer to one of its ends."""
    (x0, y0), (x1, y1) = way.line(place)
    for share in (0.5, 0.8, 0.2):
        x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
        beside = Label(x + 0.5 * size, y - 0.35 * size, figure, size, DARK, "start", halo=HALL)
        above = Label(x, y + 0.45 * size, figure, size, DARK, "middle", halo=HALL)
        if way.upright:
            yield beside
            yield evolve(beside, x=x - 0.5 * size, anchor="end")
        else:
            yield above
            yield evolve(above, y=y - 1.05 * size)


@frozen
class Way:
    """A way out of what the game needs: from its `edge` to where the nearest wall or fixed thing begins, `end`;
    measured at `place`, and as long anywhere from `low` to `high`. In metres of the floor."""

    edge: float
    end: float
    place: float
    low: float
    high: float
    upright: bool

    @property
    def clear_m(self) -> float:
        """How far it is."""
        return abs(self.end - self.edge)

    @property
    def places(self) -> tuple[float, ...]:
        """Where it may be drawn, the usual one first."""
        steps = (self.low + (self.high - self.low) * step / 8 for step in range(1, 8))
        return (self.place, *steps)

    def line(self, place: float) -> tuple[Point, Point]:
        """From the edge to the end, at a place."""
        if self.upright:
            return (place, self.edge), (place, self.end)
        return (self.edge, place), (self.end, place)


def _ways(floor: Floor, seen: HallSeen) -> Iterator[Way]:
    box, extent = seen.walls, floor.extent
    fixed = [thing for _name, thing in seen.fixed]
    beside = [thing for thing in fixed if _beside(thing, extent)]
    beyond = [thing for thing in fixed if _beyond(thing, extent)]
    x, y = extent.left + 0.04 * extent.length, extent.bottom + 0.07 * extent.width
    sides, ends = (extent.bottom, extent.top), (extent.left, extent.right)
    east = [(box.right, sides), *((b.left, (b.bottom, b.top)) for b in beside if b.left >= extent.right)]
    west = [(box.left, sides), *((b.right, (b.bottom, b.top)) for b in beside if b.right <= extent.left)]
    north = [(box.top, ends), *((b.bottom, (b.left, b.right)) for b in beyond if b.bottom >= extent.top)]
    south = [(box.bottom, ends), *((b.top, (b.left, b.right)) for b in beyond if b.top <= extent.bottom)]
    for edge, found, outward, upright in (
        (extent.right, east, 1, False),
        (extent.left, west, -1, False),
        (extent.top, north, 1, True),
        (extent.bottom, south, -1, True),
    ):
        end, (first, last) = min(found, key=lambda pair: abs(pair[0] - edge))
        if (end - edge) * outward > 0:
            least, most = ends if upright else sides
            low, high = max(first, least), min(last, most)
            yield Way(edge, end, min(max(x if upright else y, low), high), low, high, upright)


def _beside(box: Rectangle, extent: Rectangle) -> bool:
    return box.bottom < extent.top and box.top > extent.bottom


def _beyond(box: Rectangle, extent: Rectangle) -> bool:
    return box.left < extent.right and box.right > extent.left

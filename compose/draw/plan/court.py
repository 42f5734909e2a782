"""The court, its halves and its areas, with patterns that can be told apart in grey."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.draw.plan.sheet import Sheet
from compose.draw.signs.labelling import box_of, from_middle
from compose.draw.signs.lettering import width_em
from compose.draw.signs.palette import DARK, FAINT, MIDDLE, PALE, WHITE
from compose.draw.signs.shapes import Disc, Ink, Label, Lines, Shape, dashed, hatch, rectangle
from compose.staging.floor.values import FloorArea, Rectangle
from compose.telling.french import side_label
from grammar.core.area_kind import AreaKind


def draw_court(sheet: Sheet) -> None:
    """The court with a faint tint for each half, its areas, then the lines over them."""
    floor, unit = sheet.floor, sheet.unit
    sheet.shapes.append(rectangle(floor.court, Ink(WHITE)))
    for half in floor.halves:
        sheet.shapes.append(rectangle(half.rectangle, Ink(sheet.style(half.side).tint)))
    for area in floor.areas_apart:
        sheet.shapes.extend(area_shapes(area, sheet))
    line = Ink(None, DARK, 0.35 * unit)
    for half in floor.halves:
        box = half.rectangle
        if box.right < floor.length_m:
            sheet.shapes.append(Lines((((box.right, box.bottom), (box.right, box.top)),), line))
        if box.top < floor.width_m:
            sheet.shapes.append(Lines((((box.left, box.top), (box.right, box.top)),), line))
    sheet.shapes.append(rectangle(floor.court, line))


def area_shapes(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    """An area with the pattern of its kind; what belongs to a side has an edge in its colour."""
    return PATTERNS[AreaKind(area.kind)](area, sheet)


def _edge(unit: float) -> Ink:
    return Ink(None, MIDDLE, 0.18 * unit, (0.7 * unit, 0.5 * unit))


def _bench(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    plank = Lines((_middle_line(area.rectangle),), Ink(stroke=MIDDLE, width_m=0.15 * sheet.unit))
    return rectangle(area.rectangle, Ink(PALE, DARK, 0.2 * sheet.unit)), plank


def _queue(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    box, unit = area.rectangle, sheet.unit
    return rectangle(box, evolve(_edge(unit), fill=WHITE)), *_footprints(box, unit)


def _base(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    style = sheet.style(area.owner)
    return (rectangle(area.rectangle, Ink(style.tint if area.owner else FAINT, style.edge, 0.3 * sheet.unit)),)


def _circle(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    radius = min(area.rectangle.length, area.rectangle.width) / 2
    return (Disc(*area.rectangle.centre, radius, Ink(FAINT, MIDDLE, 0.25 * sheet.unit)),)


def _mark(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    return (Lines(_crossed(area.rectangle), Ink(stroke=DARK, width_m=0.4 * sheet.unit)),)


def _zone(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    strokes = dashed(area.rectangle, 2.2 * sheet.unit, Ink(stroke=PALE, width_m=0.25 * sheet.unit))
    return rectangle(area.rectangle, _edge(sheet.unit)), strokes


def _strip(area: FloorArea, sheet: Sheet) -> tuple[Shape, ...]:
    lines = hatch(area.rectangle, 1.7 * sheet.unit, Ink(stroke=PALE, width_m=0.22 * sheet.unit))
    return lines, rectangle(area.rectangle, _edge(sheet.unit))


PATTERNS = {
    AreaKind.STRIP: _strip,
    AreaKind.ZONE: _zone,
    AreaKind.BENCH: _bench,
    AreaKind.QUEUE: _queue,
    AreaKind.BASE: _base,
    AreaKind.CIRCLE: _circle,
    AreaKind.MARK: _mark,
}


def _middle_line(box: Rectangle) -> tuple[tuple[float, float], ...]:
    x, y = box.centre
    return ((x, box.bottom), (x, box.top)) if box.width > box.length else ((box.left, y), (box.right, y))


def _footprints(box: Rectangle, unit: float) -> tuple[Shape, ...]:
    """Open circles in a row: where those who wait stand."""
    long, deep = max(box.length, box.width), min(box.length, box.width)
    count = max(1, int(long / (5 * unit)))
    radius = min(0.32 * deep, 0.8 * unit)
    found = []
    for order in range(count):
        part = (order + 0.5) / count
        x = box.left + box.length * part if box.length >= box.width else box.centre[0]
        y = box.bottom + box.width * part if box.width > box.length else box.centre[1]
        found.append(Disc(x, y, radius, Ink(None, PALE, 0.2 * unit)))
    return tuple(found)


def _crossed(box: Rectangle) -> tuple[tuple[tuple[float, float], ...], ...]:
    corners = ((box.left, box.bottom), (box.right, box.top)), ((box.left, box.top), (box.right, box.bottom))
    return corners


def draw_tracks(sheet: Sheet) -> None:
    """The steps of a track as fine lines across the court, numbered from the home of its first side.

    Where steps are too close for their numbers, some numbers are left out.
    """
    size = 0.75 * sheet.text_m
    for track in sheet.floor.tracks:
        runs = tuple(((x, 0.0), (x, sheet.floor.width_m)) for x in track.steps)
        sheet.shapes.append(Lines(runs, Ink(stroke=MIDDLE, width_m=0.12 * sheet.unit, dash=(0.3 * sheet.unit,) * 2)))
        numbered: list[Rectangle] = []
        for step, x in enumerate(track.steps):
            inward = 0.3 * size * (1 if x < sheet.floor.length_m / 2 else -1)
            anchor = "start" if inward > 0 else "end"
            label = Label(x + inward, 0.35 * size, str(step), size, DARK, anchor, halo=WHITE)
            box = box_of(label)
            if any(box.grown(0.2 * size).overlaps(other) for other in numbered):
                continue
            numbered.append(box)
            sheet.shapes.append(label)
            sheet.clearings.take(box)


def name_areas(sheet: Sheet) -> None:
    """The name of each area inside it, clear of the line between halves; where it is too small the legend must do."""
    for half in sheet.floor.halves:
        box = half.rectangle
        if box.right < sheet.floor.length_m:
            sheet.clearings.take(Rectangle(box.right, box.bottom, box.right, box.top))
    for area in sheet.floor.areas_apart:
        box, size = area.rectangle, 0.85 * sheet.text_m
        words = Label(0.0, 0.0, sheet.wording.named(area.name), size, DARK, "middle", halo=WHITE)
        room = box.grown(0.2 * size) if area.kind in ("bench", "queue") else box
        placed = sheet.clearings.place(_inside(words, box), 0.3 * size, room, least=0.1 * size)
        if placed:
            sheet.shapes.append(placed)


def _inside(words: Label, box: Rectangle) -> Iterator[Label]:
    """Places for words in a box: along the floor first, then across it."""
    size = words.size_m
    for y in from_middle(box.bottom, box.top, 8):
        for x in from_middle(box.left, box.right, 8):
            yield evolve(words, x=x, y=y - 0.3 * size)
    for x in from_middle(box.left, box.right, 8):
        for y in from_middle(box.bottom, box.top, 8):
            yield evolve(words, x=x + 0.3 * size, y=y, turned=90.0)


def name_sides(sheet: Sheet, above_m: float) -> None:
    """The name of each side in capitals above its part of the court, or in it where less than `above_m` is clear."""
    top = sheet.floor.extent.top
    for half in sheet.floor.halves:
        box = half.rectangle
        words = side_label(sheet.wording, half.side).upper()
        size = min(1.15 * sheet.text_m, 0.95 * box.length / width_em(words, True))
        name = Label(box.centre[0], top + 0.5 * size, words, size, DARK, "middle", True)
        if above_m < 1.6 * size or box.top < sheet.floor.width_m:
            inside = [
                evolve(name, x=x, y=y, halo=WHITE)
                for y in from_middle(box.bottom + size, box.top - size, 8)
                for x in from_middle(box.left, box.right, 6)
            ]
            inside += [
                evolve(name, x=x + 0.3 * size, y=y, turned=90.0, halo=WHITE)
                for x in from_middle(box.left + size, box.right - size, 6)
                for y in from_middle(box.bottom, box.top, 6)
            ]
            name = sheet.clearings.place(inside, 0.4 * size, box) or name
        else:
            sheet.clearings.take(box_of(name))
        sheet.shapes.append(name)


def draw_sizes(sheet: Sheet) -> None:
    """The length and the width of the court with ticks, below it and on its left."""
    floor, unit, size = sheet.floor, sheet.unit, sheet.text_m
    y, x = sheet.extent.bottom - 0.7 * unit - 0.5 * size, sheet.extent.left - 0.7 * unit - 0.5 * size
    tick, gap = 0.6 * unit, 1.4 * size
    half_long, half_wide = floor.length_m / 2, floor.width_m / 2
    runs = (
        ((0.0, y), (half_long - gap, y)),
        ((half_long + gap, y), (floor.length_m, y)),
        ((0.0, y - tick), (0.0, y + tick)),
        ((floor.length_m, y - tick), (floor.length_m, y + tick)),
        ((x, 0.0), (x, half_wide - gap)),
        ((x, half_wide + gap), (x, floor.width_m)),
        ((x - tick, 0.0), (x + tick, 0.0)),
        ((x - tick, floor.width_m), (x + tick, floor.width_m)),
    )
    sheet.shapes.append(Lines(runs, Ink(stroke=MIDDLE, width_m=0.15 * unit)))
    long, wide = (f"{sheet.wording.figure(metres)} m" for metres in (floor.length_m, floor.width_m))
    sheet.shapes.append(Label(half_long, y - 0.35 * size, long, size, DARK, "middle"))
    sheet.shapes.append(Label(x + 0.35 * size, half_wide, wide, size, DARK, "middle", turned=90.0))

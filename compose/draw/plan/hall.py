"""The hall around the court: walls, doors, fixed things, run-off figures, the north arrow; and whether it fits."""

from __future__ import annotations

import library
from compose.draw.plan.sheet import Sheet
from compose.draw.signs.labelling import box_of, from_middle, gap
from compose.draw.signs.lettering import shortened
from compose.draw.signs.palette import DARK, HALL, MIDDLE, PALE, WHITE
from compose.draw.signs.shapes import Ink, Label, Lines, Point, Polygon, Shape, hatch, rectangle
from compose.staging.clear_floor import fixed_boxes
from compose.staging.floor.values import Floor, Rectangle
from compose.staging.turned import turned_box, turned_hall
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import frozen
from library.records import Door, Hall

STEPS_DOWN = 12  # of one letter's height: how far down a clear place for the north arrow is looked for


@frozen
class HallSeen:
    """A hall as it is seen around a floor, its walls in the floor's metres."""

    hall: Hall
    walls: Rectangle

    @property
    def fixed(self) -> tuple[tuple[str, Rectangle], ...]:
        """What stands fixed in it by name, in the floor's metres."""
        boxes = (each.moved(self.walls.left, self.walls.bottom) for each in fixed_boxes(self.hall))
        return tuple(zip((each.name for each in self.hall.obstacles), boxes, strict=True))


def hall_seen(floor: Floor, hall: Hall, court: Rectangle | None = None, turned: bool = False) -> HallSeen:
    """The hall around a floor that takes `court` of it, in the hall's metres; without one the floor is in its middle.
    `turned` where the court lies across the hall: it is seen along the court."""
    seen = turned_hall(hall) if turned else hall
    long, wide = seen.length_m.usual, seen.width_m.usual
    extent, own = floor.extent, court
    if own is not None and turned:
        own = turned_box(own, hall.length_m.usual)
    left, low = (own.left, own.bottom) if own else ((long - extent.length) / 2, (wide - extent.width) / 2)
    return HallSeen(seen, Rectangle(0.0, 0.0, long, wide).moved(extent.left - left, extent.bottom - low))


def draw_hall_floor(sheet: Sheet, seen: HallSeen) -> None:
    """The floor of the hall with the lines on it; to be drawn before the court."""
    box = seen.walls
    sheet.shapes.append(rectangle(box, Ink(HALL)))
    for marking in seen.hall.markings:
        court = library.courts()[marking.court]
        long, wide = court.length_m.usual, court.width_m.usual
        along, across = (wide, long) if marking.turned else (long, wide)
        x, y = box.left + marking.x_m, box.bottom + marking.y_m
        lines = Rectangle(x - along / 2, y - across / 2, x + along / 2, y + across / 2)
        sheet.shapes.append(rectangle(lines, Ink(None, PALE, 0.3 * sheet.unit)))


def lines_told(hall: Hall, wording: Wording) -> tuple[str, ...]:
    """Which courts' lines are on the floor."""
    courts = dict.fromkeys(wording.known("court", each.court) or each.court for each in hall.markings)
    return (wording.say("Lines on its floor: {courts}.", courts=wording.listed(courts)),) if courts else ()


def draw_walls(sheet: Sheet, seen: HallSeen) -> None:
    """Walls, doors and fixed things, over the court, so that a hall too small is seen at once."""
    box, unit = seen.walls, sheet.unit
    for _name, fixed in seen.fixed:
        sheet.shapes.append(rectangle(fixed, Ink(PALE, DARK, 0.2 * unit)))
        sheet.shapes.append(hatch(fixed, 0.9 * unit, Ink(stroke=MIDDLE, width_m=0.14 * unit)))
        sheet.clearings.take(fixed)
    sheet.shapes.append(rectangle(box, Ink(None, DARK, 0.7 * unit)))
    for door in seen.hall.doors:
        sheet.shapes.extend(_door(door, box, unit, 0.85 * sheet.text_m, sheet.wording.say("door")))


def _door(door: Door, box: Rectangle, unit: float, size: float, name: str) -> tuple[Shape, ...]:
    """A gap in the wall and an arrow through it, with the word outside."""
    half = door.width_m / 2
    along = door.side in ("north", "south")
    wall = {"north": box.top, "south": box.bottom, "east": box.right, "west": box.left}[door.side]
    out = 1.0 if door.side in ("north", "east") else -1.0
    middle = (box.left if along else box.bottom) + door.at_m

    def at(place: float, off: float) -> Point:
        return (place, wall + out * off) if along else (wall + out * off, place)

    opening = Lines(((at(middle - half, 0.0), at(middle + half, 0.0)),), Ink(stroke=WHITE, width_m=0.9 * unit))
    posts = Lines(
        ((at(middle - half, -unit), at(middle - half, unit)), (at(middle + half, -unit), at(middle + half, unit))),
        Ink(stroke=DARK, width_m=0.35 * unit),
    )
    head = Polygon(
        (at(middle, -1.4 * unit), at(middle - 0.7 * unit, 0.2 * unit), at(middle + 0.7 * unit, 0.2 * unit)), Ink(DARK)
    )
    x, y = at(middle, (0.7 if out > 0 else 1.4) * size if along else 0.9 * size + (0.8 * size if out > 0 else 0.0))
    word = Label(x, y, name, size, DARK, "middle", turned=0.0 if along else 90.0)
    return opening, posts, head, word


def name_fixed(sheet: Sheet, seen: HallSeen) -> None:
    """The names of the fixed things, inside them or beside them."""
    size = 0.8 * sheet.text_m
    box = seen.walls
    for written, fixed in seen.fixed:
        name = sheet.wording.author(written)
        x, y = fixed.centre
        low = y - 0.3 * size
        wanted = [
            Label(x + 0.3 * size, y, name, size, DARK, "middle", turned=90.0, halo=WHITE),
            Label(x, fixed.bottom - size, name, size, DARK, "middle", halo=WHITE),
            Label(x, fixed.top + 0.4 * size, name, size, DARK, "middle", halo=WHITE),
            *(
                Label(fixed.right + 0.4 * size, y, name, size, DARK, "start", halo=WHITE)
                for y in from_middle(fixed.bottom, fixed.top - size, 4)
            ),
            *(
                Label(fixed.left - 0.4 * size, y, name, size, DARK, "end", halo=WHITE)
                for y in from_middle(fixed.bottom, fixed.top - size, 4)
            ),
        ]
        if fixed.width < 5 * size or fixed.length < size:
            wanted = [Label(x, low, name, size, DARK, "middle", halo=WHITE), *wanted[1:]]
            wanted = wanted if fixed.length > 5 * size and fixed.width > size else wanted[1:]
        sheet.clearings.taken = [taken for taken in sheet.clearings.taken if taken != fixed]
        placed = sheet.clearings.place(wanted, 0.2 * size, box)
        sheet.clearings.take(fixed)
        if placed:
            sheet.shapes.append(placed)


def draw_north(sheet: Sheet, x: float, y: float, turned: bool, word: str) -> float:
    """A north arrow with its foot at (x, y), or further down where other words stand: the hall's file says which wall
    is north; `turned` it is on the right. Gives the x where it ends."""
    size, words = sheet.text_m, [shape for shape in sheet.shapes if isinstance(shape, Label)]
    for down in range(STEPS_DOWN):
        arrow, label = _north(x, y - down * size, size, turned, word)
        if all(gap(box_of(label), box_of(other)) > 0 for other in words):
            break
    sheet.shapes.extend((*arrow, label))
    return max(box_of(label).right, *(corner[0] for half in arrow for corner in half.points))


def _north(x: float, y: float, size: float, turned: bool, word: str) -> tuple[tuple[Polygon, ...], Label]:
    """The two halves of the arrow and its word: a letter at its head, a longer one along it."""
    wide, high, notch = 0.65 * size, 2.1 * size, 0.45 * size

    def at(across: float, ahead: float) -> Point:
        return (x - wide + ahead, y + high / 2 - across) if turned else (x + across, y + ahead)

    left = Polygon((at(0.0, high), at(0.0, notch), at(-wide, 0.0)), Ink(DARK))
    right = Polygon((at(0.0, high), at(0.0, notch), at(wide, 0.0)), Ink(WHITE, DARK, 0.08 * size))
    if len(word) == 1:
        above = at(0.3 * size, high + 0.15 * size) if turned else at(0.0, high + 0.25 * size)
        return (left, right), Label(*above, word, 0.9 * size, DARK, "start" if turned else "middle", True)
    if turned:
        return (left, right), Label(*at(2.0 * wide, 0.0), word, 0.9 * size, DARK, "start")
    foot, head = at(2.6 * wide, 0.0)[0], at(0.0, high)[1]
    return (left, right), Label(foot, head, word, 0.9 * size, DARK, "end", turned=90.0)


def hall_words(hall: Hall, wording: Wording = ENGLISH) -> str:
    """The hall and its size in one line."""
    long, wide = wording.figure(hall.length_m.usual), wording.figure(hall.width_m.usual)
    name = wording.author(hall.name)
    return shortened(wording.say("{hall}, {long} m by {wide} m", hall=name, long=long, wide=wide), 1.0, 40.0)

"""What of a court has no room in a hall: where it reaches beyond a wall, and what fixed things reach into it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from compose.draw.plan.hall import HallSeen
from compose.draw.plan.sheet import Sheet
from compose.draw.plan.throws import clear_metres
from compose.draw.signs.labelling import box_of, from_middle
from compose.draw.signs.palette import WARNING, WHITE
from compose.draw.signs.shapes import Ink, Label, Lines, Shape, hatch, rectangle
from compose.staging.floor.values import Floor, Rectangle
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import evolve, frozen

LEAST_M = 0.01  # our choice: what reaches in by less than this is a matter of the tape


@frozen
class Intrusion:
    """Floor that a court needs and does not have, how deep it is, and what is there ("": a wall)."""

    box: Rectangle
    metres: float
    name: str = ""

    def words(self, wording: Wording) -> str:
        """Such as "stage: 0.8 m in the way", "1.5 m beyond the wall"."""
        far = clear_metres(self.metres, wording)
        if self.name:
            return wording.say("{what}: {distance} in the way", what=wording.author(self.name), distance=far)
        return wording.say("{distance} beyond the wall", distance=far)


def intrusions(floor: Floor, courts: Sequence[Rectangle], seen: HallSeen) -> Iterator[Intrusion]:
    """All of them, in the metres of the floor; `courts` are the courts with what lies beside them."""
    walls = seen.walls
    whole = courts[0]
    for court in courts[1:]:
        whole = whole.joined(court)
    for beyond in (
        evolve(whole, right=min(whole.right, walls.left)),
        evolve(whole, left=max(whole.left, walls.right)),
        evolve(whole, top=min(whole.top, walls.bottom)),
        evolve(whole, bottom=max(whole.bottom, walls.top)),
    ):
        deep = min(beyond.length, beyond.width)
        if deep > LEAST_M and beyond != whole:
            yield Intrusion(beyond, deep)
    for name, fixed in seen.fixed:
        for court in courts:
            if fixed.overlaps(court):
                low = max(fixed.left, court.left), max(fixed.bottom, court.bottom)
                high = min(fixed.right, court.right), min(fixed.top, court.top)
                shared = Rectangle(*low, *high)
                deep = min(shared.length, shared.width)
                if deep > LEAST_M:
                    yield Intrusion(shared, deep, name)


# Places for a name that finds none beside what it names, in heights of its letters, the nearest first.
FARTHER = sorted(((across, up) for across in range(-16, 17, 2) for up in range(-12, 13)), key=lambda off: hypot(*off))


def hatch_intrusions(sheet: Sheet, courts: Sequence[Rectangle], seen: HallSeen) -> None:
    """Each hatched on the floor: what stands there and what it is called are drawn over it, and stay readable."""
    unit = sheet.unit
    for found in intrusions(sheet.floor, courts, seen):
        sheet.shapes.append(hatch(found.box, 0.8 * unit, Ink(stroke=WARNING, width_m=0.3 * unit)))
        sheet.shapes.append(rectangle(found.box, Ink(None, WARNING, 0.4 * unit)))


def name_intrusions(sheet: Sheet, courts: Sequence[Rectangle], seen: HallSeen) -> None:
    """Each named on the drawing itself."""
    size = 0.85 * sheet.text_m
    for found in intrusions(sheet.floor, courts, seen):
        box = found.box
        words = Label(0.0, 0.0, found.words(sheet.wording), size, WARNING, "middle", True, halo=WHITE)
        (x, y), high = box.centre, 1.3 * size
        wanted = [
            *(evolve(words, x=x, y=at) for at in (y - 0.3 * size, box.top + 0.4 * size, box.bottom - high)),
            *(
                evolve(words, x=box.right + 0.5 * size, y=at, anchor="start")
                for at in from_middle(box.bottom, box.top, 4)
            ),
            *(evolve(words, x=box.left - 0.5 * size, y=at, anchor="end") for at in from_middle(box.bottom, box.top, 4)),
            *(evolve(words, x=x + across * size, y=y + up * size) for across, up in FARTHER),
        ]
        placed = sheet.clearings.place(wanted, 0.1 * size)
        if placed is not None:
            sheet.shapes.extend((*_leader(box, box_of(placed), size), placed))
            sheet.clearings.take(box_of(placed))


def _leader(box: Rectangle, words: Rectangle, size: float) -> Iterator[Shape]:
    """A line from what is named to its words, where they stand farther off than they are high."""
    start = box.nearest(*words.centre)
    end = words.nearest(*start)
    if hypot(end[0] - start[0], end[1] - start[1]) > size:
        yield Lines(((start, end),), Ink(stroke=WARNING, width_m=0.08 * size))


def intruding(floor: Floor, courts: Sequence[Rectangle], seen: HallSeen, wording: Wording = ENGLISH) -> tuple[str, ...]:
    """The same in words, each once."""
    return tuple(dict.fromkeys(found.words(wording) for found in intrusions(floor, courts, seen)))

"""The courts in the hall: which way round, how many side by side, where its floor is clear, how far from the walls."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.clear_floor import apart_m, clear_floors, fixed_boxes, walls
from compose.staging.floor.values import Floor, Rectangle
from grammar.frozen import evolve, frozen
from library import Hall

BETWEEN_M = 2.0  # assumption: the gap between two games, as wide as the strip before a wall


@frozen
class Room:
    """One or more courts in a hall; lengths in m.

    `turned` where the court lies across the hall. `columns` of the courts lie beside each other along the hall; all of
    them take `box` of it, with what lies between them, from its south-west corner. `least_m` has to be clear around.
    """

    hall: Hall
    courts: int
    turned: bool
    long: float
    wide: float
    box: Rectangle
    columns: int
    least_m: float

    @property
    def area_m2(self) -> float:
        """The floor of the hall."""
        return self.hall.area_m2

    @property
    def _strips(self) -> tuple[float, float]:
        """The narrower strips to the walls along the hall and across it."""
        around = walls(self.hall)
        return min(self.box.left, around.right - self.box.right), min(self.box.bottom, around.top - self.box.top)

    @property
    def beside(self) -> float:
        """The narrower of the clear strips to the walls that run along the court; below 0 where it is too large."""
        return self._strips[0 if self.turned else 1]

    @property
    def behind(self) -> float:
        """The same of those to the walls behind its back lines."""
        return self._strips[1 if self.turned else 0]

    @property
    def fits(self) -> bool:
        """Whether all courts lie inside the walls."""
        return self.beside >= -1e-9 and self.behind >= -1e-9

    @property
    def run_off(self) -> float:
        """The narrower of the two strips."""
        return min(self.beside, self.behind)

    @property
    def boxes(self) -> tuple[Rectangle, ...]:
        """Each court with what lies beside it, row by row."""
        size = (self.wide, self.long) if self.turned else (self.long, self.wide)
        return tuple(each.moved(self.box.left, self.box.bottom) for each in in_rows(*size, self.courts, self.columns))

    @property
    def clear(self) -> tuple[float, ...]:
        """How far the courts are from each wall and from each fixed thing, the nearest first; below 0 where they are
        over it."""
        around, box = walls(self.hall), self.box
        found = [box.left, box.bottom, around.right - box.right, around.top - box.top]
        boxes = self.boxes
        found += [min(apart_m(fixed, court) for court in boxes) for fixed in fixed_boxes(self.hall)]
        return tuple(sorted(found))

    def lacking_m(self, clear: Rectangle, strip_m: float) -> tuple[float, float]:
        """What a clear floor of the hall lacks for the courts with such a strip all round, along the hall and across
        it; below 0 where there is room to spare."""
        box = self.box
        lacking = box.length + 2 * strip_m - clear.length, box.width + 2 * strip_m - clear.width
        return round(lacking[0], 6), round(lacking[1], 6)

    def best_floor(self, strip_m: float) -> Rectangle:
        """The clear floor of the hall that lacks the least for the courts with such a strip all round. Without any
        clear floor it is the hall itself."""
        floors = clear_floors(self.hall) or (walls(self.hall),)
        return min(floors, key=lambda clear: max(self.lacking_m(clear, strip_m)))

    @property
    def short_m(self) -> float:
        """By how much the courts have to be smaller, along and across, for the least strip to be clear around them;
        below 0 where there is more."""
        return max(self.lacking_m(self.best_floor(self.least_m), self.least_m))

    @property
    def short_in_all_m(self) -> float:
        """What is lacking along the hall and across it together; 0 where the least strip is clear."""
        return sum(max(0.0, each) for each in self.lacking_m(self.best_floor(self.least_m), self.least_m))

    @property
    def nearest_m(self) -> float:
        """How far the courts are from what is nearest to them; where they lie over something, by how much the clear
        floor is too small on each side, below 0."""
        return self.clear[0] if self.clear[0] >= 0 else min(0.0, -max(self.lacking_m(self.best_floor(0.0), 0.0)) / 2)


def in_rows(along: float, across: float, courts: int, columns: int) -> Iterator[Rectangle]:
    """So many rectangles of one size, so many beside each other, with the usual gap; the first begins at (0, 0)."""
    for number in range(courts):
        row, column = divmod(number, columns)
        x, y = column * (along + BETWEEN_M), row * (across + BETWEEN_M)
        yield Rectangle(x, y, x + along, y + across)


def room_for(floor: Floor, hall: Hall, courts: int, least_m: float, usual_m: float) -> Room:
    """The way to lay out so many courts that leaves the widest strip around them. They lie in the middle of the hall,
    or as near to it as leaves a strip of `usual_m` around them or as much of it as there can be."""
    laid = (_laid(each, usual_m) for each in _ways(floor, hall, courts, least_m))
    return max(laid, key=lambda room: round(room.nearest_m, 6))


def _ways(floor: Floor, hall: Hall, courts: int, least_m: float) -> Iterator[Room]:
    """Courts in rows along the hall, each lying along it or across it."""
    size = floor.extent.length, floor.extent.width
    for turned, (along, across) in ((False, size), (True, size[::-1])):
        for rows in range(1, courts + 1):
            columns = -(-courts // rows)
            if columns * (rows - 1) >= courts:
                continue
            whole = Rectangle(
                0.0, 0.0, columns * along + (columns - 1) * BETWEEN_M, rows * across + (rows - 1) * BETWEEN_M
            )
            yield Room(hall, courts, turned, *size, whole, columns, least_m)


def _laid(room: Room, usual_m: float) -> Room:
    """The courts where most is clear around them, as far as is usual, and then as near to the middle as can be."""
    around, box = walls(room.hall), room.box
    x, y = (around.length - box.length) / 2, (around.width - box.width) / 2
    places = [(x, y)]
    for clear in clear_floors(room.hall) if room.hall.obstacles else ():
        across = _on_line((clear.left, clear.right), box.length, x, around.right, usual_m)
        places.append((across, _on_line((clear.bottom, clear.top), box.width, y, around.top, usual_m)))
    laid = [evolve(room, box=box.moved(*place)) for place in places]

    def worth(each: Room) -> tuple[tuple[float, ...], float]:
        off = abs(each.box.left - x) + abs(each.box.bottom - y)
        return tuple(round(min(far, usual_m), 6) for far in each.clear), -round(off, 6)

    return max(laid, key=worth)


def _on_line(clear: tuple[float, float], size: float, middle: float, end: float, usual_m: float) -> float:
    """Where something so long begins on a line of the hall that is clear from one place to another: as near to the
    middle as leaves the usual strip, else halfway between, but not over a wall if it need not be."""
    if size >= end:
        return middle
    spare = (clear[1] - clear[0] - size) / 2
    if spare < 0:
        return min(max(clear[0] + spare, 0.0), end - size)
    strip = min(spare, usual_m)
    return min(max(middle, clear[0] + strip), clear[1] - strip - size)


def most_courts(floor: Floor, hall: Hall, least_m: float, usual_m: float, wanted: int) -> int:
    """How many courts, at most as many as wanted, lie in the hall with the least strip around them."""
    fitting = 0
    for courts in range(1, wanted + 1):
        if room_for(floor, hall, courts, least_m, usual_m).nearest_m < least_m - 1e-9:
            break
        fitting = courts
    return fitting

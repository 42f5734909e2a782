"""The court in the hall: which way round, how many side by side, how far from the walls, how much for each pupil."""

from __future__ import annotations

from collections.abc import Iterator

from compose.staging.clear_floor import clear_floors
from compose.staging.floor.values import Floor, Rectangle
from grammar.frozen import frozen
from library import Hall

BETWEEN_M = 2.0  # assumption: the gap between two games, as wide as the strip before a wall


@frozen
class Room:
    """One or more courts in a hall; lengths in m.

    `turned` where the court lies across the hall. `beside` and `behind` are the clear strips to the walls that
    run along the court and to those behind its back lines, shared evenly; below 0 where it is too large. `columns`
    of the courts lie beside each other along the hall. `along` and `across` is what all of them take of the hall, with
    what lies between them.
    """

    hall: Hall
    courts: int
    turned: bool
    long: float
    wide: float
    beside: float
    behind: float
    along: float
    across: float
    columns: int = 1

    @property
    def area_m2(self) -> float:
        """The floor of the hall."""
        return self.hall.area_m2

    @property
    def fits(self) -> bool:
        """Whether all courts lie inside the walls."""
        return self.beside >= -1e-9 and self.behind >= -1e-9

    @property
    def run_off(self) -> float:
        """The narrower of the two strips."""
        return min(self.beside, self.behind)

    def best_floor(self, strip_m: float) -> tuple[float, Rectangle]:
        """The clear floor of the hall that lacks the least for the courts with such a strip all round, and how many
        metres that is; below 0 where there is room to spare. Without any clear floor it is the hall itself."""
        walls = Rectangle(0.0, 0.0, self.hall.length_m.usual, self.hall.width_m.usual)
        floors = clear_floors(self.hall) or (walls,)
        along, across = self.along + 2 * strip_m, self.across + 2 * strip_m
        lacking = [max(along - each.length, across - each.width) for each in floors]
        least = min(range(len(floors)), key=lambda number: round(lacking[number], 6))
        return lacking[least], floors[least]


def room_for(floor: Floor, hall: Hall, courts: int = 1) -> Room:
    """The way to lay out so many courts that leaves the widest strip to the walls."""
    return max(_ways(floor, hall, courts), key=lambda room: round(room.run_off, 6))


def _ways(floor: Floor, hall: Hall, courts: int) -> Iterator[Room]:
    """Courts in rows along the hall, each lying along it or across it."""
    size = floor.extent.length, floor.extent.width
    for turned, (along, across) in ((False, size), (True, size[::-1])):
        for rows in range(1, courts + 1):
            columns = -(-courts // rows)
            if columns * (rows - 1) >= courts:
                continue
            whole = columns * along + (columns - 1) * BETWEEN_M, rows * across + (rows - 1) * BETWEEN_M
            ends, sides = (hall.length_m.usual - whole[0]) / 2, (hall.width_m.usual - whole[1]) / 2
            beside, behind = (ends, sides) if turned else (sides, ends)
            yield Room(hall, courts, turned, size[0], size[1], beside, behind, *whole, columns)


def most_courts(floor: Floor, hall: Hall, run_off_m: float, wanted: int) -> int:
    """How many courts, at most as many as wanted, lie in the hall with such a strip to the walls."""
    fitting = 0
    for courts in range(1, wanted + 1):
        if room_for(floor, hall, courts).run_off < run_off_m - 1e-9:
            break
        fitting = courts
    return fitting

"""Finding a clear place for words: of some places in question, the one that is furthest from all else."""

from __future__ import annotations

from collections.abc import Iterable
from math import inf

from attrs import define, field

from compose.draw.signs.lettering import width_em
from compose.draw.signs.shapes import Label
from compose.staging.floor.values import Rectangle


def box_of(label: Label) -> Rectangle:
    """The rectangle that a label covers; it may be turned by 0 or 90 degrees."""
    long = width_em(label.text, label.bold) * label.size_m
    before = {"start": 0.0, "middle": long / 2, "end": long}[label.anchor]
    down, up = 0.25 * label.size_m, 0.8 * label.size_m
    if label.turned:
        return Rectangle(label.x - up, label.y - before, label.x + down, label.y - before + long)
    return Rectangle(label.x - before, label.y - down, label.x - before + long, label.y + up)


def gap(one: Rectangle, other: Rectangle) -> float:
    """The gap between two rectangles in metres; below 0 they overlap by that much."""
    apart_x = max(one.left - other.right, other.left - one.right)
    apart_y = max(one.bottom - other.top, other.bottom - one.top)
    return max(apart_x, apart_y)


@define
class Clearings:
    """What is taken on a drawing. Labels that are placed here are taken from then on."""

    taken: list[Rectangle] = field(factory=list)

    def clearance(self, box: Rectangle, beyond: float = -inf) -> float:
        """The gap to the nearest thing; 1000 where there is nothing. Where it is no more than `beyond`, only that."""
        nearest = 1000.0
        for other in self.taken:
            nearest = min(nearest, gap(box, other))
            if nearest <= beyond:
                break
        return nearest

    def take(self, box: Rectangle) -> None:
        """Nothing else shall lie here."""
        self.taken.append(box)

    def place(
        self, wanted: Iterable[Label], enough: float, within: Rectangle | None = None, least: float = -1000.0
    ) -> Label | None:
        """The first of the wanted places with a clearance that is enough, else the clearest of at least `least`.

        None where no place is inside `within` or none is clear enough.
        """
        best: tuple[float, Label, Rectangle] | None = None
        for label in wanted:
            box = box_of(label)
            if within is not None and not _inside(box, within):
                continue
            clear = self.clearance(box, best[0] if best else -inf)
            if best is None or clear >= enough or round(clear, 6) > round(best[0], 6):
                best = clear, label, box
            if clear >= enough:
                break
        if best is None or best[0] < least:
            return None
        self.take(best[2])
        return best[1]


def _inside(box: Rectangle, within: Rectangle) -> bool:
    return (
        within.left <= box.left and box.right <= within.right and within.bottom <= box.bottom and box.top <= within.top
    )


def from_middle(low: float, high: float, steps: int) -> Iterable[float]:
    """Places between low and high, the middle first, then further and further from it."""
    middle, reach = (low + high) / 2, (high - low) / 2
    yield middle
    for step in range(1, steps + 1):
        yield middle + reach * step / steps
        yield middle - reach * step / steps

"""Points by target: what each is worth, and a whole set of them."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, Quantity, spoken


@frozen
class Worth(Node):
    """Such as "cones score 5": what one of them is worth."""

    what: Np
    points: Quantity

    def words(self) -> str:
        return spoken(self.what, self.points)


@frozen
class TargetPoints(Node):
    """Such as "bottles score 1, skittles 2 and cones 5 points"."""

    worths: tuple[Worth, ...] = field(metadata={"rest": True})

    def words(self) -> str:
        first, *others = self.worths
        said = [spoken(first.what, "score", first.points), *(each.words() for each in others)]
        noun = "point" if self.worths[-1].points.value == 1 else "points"
        return " and ".join(part for part in (", ".join(said[:-1]), said[-1]) if part) + f" {noun}"


@frozen
class SetPoints(Node):
    """Such as "all 3 skittles of the other side down: 5 points": more, for whoever knocks the last of them."""

    what: Np
    points: Quantity
    noun: str = field(eq=False)

    def words(self) -> str:
        noun = "point" if self.points.value == 1 else "points"
        return spoken(self.what, "down:", self.points, noun)

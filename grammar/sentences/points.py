"""Points by target: what each is worth, and a whole set of them."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.frozen import field, frozen
from grammar.sentences.base import AnySide, Node, Np, Quantity, SideNamed, SideOf, SideRef, SideSame, spoken
from grammar.sentences.claims import Counted
from grammar.sentences.determiners import EACH, ONE


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
        verb = "is worth" if first.what.determiner in (*EACH, *ONE) else "score"
        return _listed(spoken(first.what, verb, first.points), others, first.points)


@frozen
class EndWorth(Node):
    """Such as "each egg in its nest base is worth 1"."""

    determiner: str | None
    counted: Counted
    verb: str = field(eq=False)
    points: Quantity

    def words(self) -> str:
        verb = "is worth" if self.determiner in (*EACH, *ONE) else "score"
        return spoken(self.determiner, self.counted, verb, self.points)


@frozen
class AtTheEnd(Node):
    """Such as "at the end eggs in the nest base score 1 and shells 2 points": of what lies there then, at one place."""

    first: EndWorth
    others: tuple[Worth, ...]
    side: AnySide | None = None

    def words(self) -> str:
        return spoken("at the end", _listed(self.first.words(), self.others, self.first.points), self._for_whom())

    def _for_whom(self) -> str | None:
        return spoken("for", self.side) if self.side is not None else None


def _listed(first: str, others: Sequence[Worth], points: Quantity) -> str:
    """ "bottles score 1, skittles 2 and cones 5 points"."""
    said = [first, *(each.words() for each in others)]
    noun = "point" if (others[-1].points if others else points).value == 1 else "points"
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


@frozen
class BeginsPoints(Node):
    """Such as "each side begins with 10 points"; "each player has 5 points", where each plays for themselves."""

    who: Np | SideRef | SideOf | SideNamed | SideSame
    verb: str = field(eq=False)
    number: Quantity
    noun: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.who, "begins with", self.number, "point" if self.number.value == 1 else "points")

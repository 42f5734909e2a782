"""How many is asked for: a number, a part of all there are."""

from __future__ import annotations

from grammar.core.guards import WHOLE, PartOfAll, Relation, Whole
from grammar.core.reading.sheet.whose import Senseless
from grammar.sentences import claims
from grammar.sentences.determiners import ALL, ONE

_HALVES = {
    "more than half of its": (Relation.AT_LEAST, True),
    "at least half of its": (Relation.AT_LEAST, False),
    "at most half of its": (Relation.AT_MOST, False),
    "fewer than half of its": (Relation.AT_MOST, True),
}


def amount(quantity: claims.AmountOf, shrinks: bool) -> tuple[Relation, int | Whole | PartOfAll]:
    """A bare number is exact where play makes less of it, and enough once reached where it is built up.

    Half of it is reached from above or from below in the same way. Raises Senseless where it is always so.
    """
    match quantity:
        case claims.NoneOf():
            return Relation.EQUAL, 0
        case claims.AtMost():
            return Relation.AT_MOST, quantity.count.whole
        case claims.AtLeast():
            if quantity.count.whole == 0:
                raise Senseless(quantity, "At least 0 is always so.", "Write no, or a larger number.")
            return Relation.AT_LEAST, quantity.count.whole
        case claims.Exactly() if quantity.count.whole == 0:
            return Relation.EQUAL, 0  # of what is built up, too: to have 0 points is to have none
        case claims.Exactly():
            return (Relation.EQUAL if shrinks else Relation.AT_LEAST), quantity.count.whole
        case claims.AllBut():
            return (Relation.EQUAL if shrinks else Relation.AT_LEAST), PartOfAll(False, quantity.count.whole)
        case claims.HalfOf():
            bare = Relation.AT_MOST if shrinks else Relation.AT_LEAST
            relation, beyond = _HALVES.get(quantity.amount, (bare, False))
            return relation, PartOfAll(True, beyond=beyond)
        case claims.AllOf() if quantity.determiner in ALL:
            return Relation.AT_LEAST, WHOLE
        case claims.AllOf() if quantity.determiner in (*ONE, "the"):
            return Relation.AT_LEAST, 1
    raise Senseless(quantity, "`{said}` does not say how many.", "Write a number, no or all.")

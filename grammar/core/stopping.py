"""Who stops balls before a target."""

from __future__ import annotations

from enum import Enum

from grammar.core.play import Lines
from grammar.core.values import Population, Thing
from grammar.frozen import field, frozen


class Means(Enum):
    """With what a ball is blocked."""

    BODY = "body"
    HANDS = "hands"
    FEET = "feet"
    MAT = "mat"
    TRAY = "tray"


@frozen
class Blocking:
    """These players stop balls that are sent at a thing: so many at each of them, or (None) all who there are."""

    who: frozenset[Population]
    thing: Thing
    each: int | None
    means: Means
    lines: Lines = field(eq=False)

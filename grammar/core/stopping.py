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
    HANDS_AND_FEET = "hands and feet"
    HANDS_AND_BODY = "hands and body"
    FEET_AND_BODY = "feet and body"
    ALL_OF_IT = "hands, feet and body"
    MAT = "mat"
    TRAY = "tray"


@frozen
class Blocking:
    """These players stop balls that are sent at a thing: so many at each of them, or (None) all who there are.

    `near`: whoever of them is near, while they do something else, too; that it is one at a time is an assumption.
    """

    who: frozenset[Population]
    thing: Thing
    each: int | None
    means: Means
    lines: Lines = field(eq=False)
    near: bool = False

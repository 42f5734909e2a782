"""Where something comes to lie that a player carried."""

from __future__ import annotations

from enum import Enum

from grammar.core.values import KindId, Spot
from grammar.frozen import frozen


class Lies(Enum):
    """Where a load comes to lie, where only play knows the place."""

    BACK = "where it was taken from"
    THERE = "where they are"


@frozen
class SetDown:
    """Whoever was touched or hit has such a thing no longer; it comes to lie somewhere."""

    what: frozenset[KindId]
    to: Spot | Lies

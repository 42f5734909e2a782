"""What a sum over places counts as a whole, where it is more than its parts: the lives that a side has left."""

from __future__ import annotations

from collections.abc import Iterable

from compose.net.net import Place


def whose_lives(terms: Iterable[tuple[int, Place]]) -> str | None:
    """The side of whose lives this is the sum: players with two of them count twice. None where it is another sum."""
    asked = list(terms)
    sides = {place.side for _, place in asked}
    counts_each = all(place.lives == times for times, place in asked)
    return sides.pop() if counts_each and len(sides) == 1 and len(asked) > 1 else None

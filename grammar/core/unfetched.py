"""Places from which nobody brings balls."""

from __future__ import annotations

from grammar.core.values import KindId, Spot
from grammar.frozen import field, frozen


@frozen
class Unfetched:
    """Nobody fetches balls of a kind from a place."""

    ball: KindId
    spot: Spot
    lines: tuple[int, ...] = field(eq=False)

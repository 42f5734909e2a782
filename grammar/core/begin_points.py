"""The points that somebody has at the start."""

from __future__ import annotations

from grammar.core.declared import Per
from grammar.core.play import Lines
from grammar.core.values import SideId
from grammar.frozen import field, frozen


@frozen
class BeginPoints:
    """A side has so many points at the start, or each of its players has, who play for themselves."""

    side: SideId
    number: int
    per: Per
    lines: Lines = field(eq=False)

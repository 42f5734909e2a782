"""What an area is, by the last word of its name."""

from __future__ import annotations

from enum import Enum


class AreaKind(Enum):
    """What an area is; who waits in a queue keeps their order."""

    STRIP = "strip"
    ZONE = "zone"
    BENCH = "bench"
    QUEUE = "queue"
    BASE = "base"
    CIRCLE = "circle"
    MARK = "mark"

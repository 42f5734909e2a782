"""How many rules of a sheet the check does not read, said in one breath with what it found."""

from __future__ import annotations

from compose.telling.wording import Wording
from grammar.core.game import Core


def without_lines(core: Core, wording: Wording) -> str:
    """What ends a verdict where rules stand in quotes; "" where all are read."""
    unread = len(core.told.quotes)
    if not unread:
        return ""
    lines = wording.counted(unread, "line in quotes", "lines in quotes")
    return wording.say(", without {lines} that only people read: the game meant may be another", lines=lines)

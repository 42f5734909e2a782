"""How many rules of a sheet the check does not read, said in one breath with what it found."""

from __future__ import annotations

from collections.abc import Iterator

from compose.telling.topics import Topic
from compose.telling.wording import Wording
from grammar.core.game import Core


def in_quotes(core: Core) -> Iterator[tuple[Topic, int, str]]:
    """Each line in quotes with its number: those that hold in every game stand apart from those that nothing reads."""
    for line, text in core.told.quotes:
        yield Topic.ANYWAY if line in core.told.anyway else Topic.UNREAD, line, text


def without_lines(core: Core, wording: Wording) -> str:
    """What ends a verdict where rules stand in quotes; "" where all are read."""
    unread = len(core.told.quotes) - len(core.told.anyway)
    if not unread:
        return ""
    lines = wording.counted(unread, "line in quotes", "lines in quotes")
    return wording.say(", without {lines} that only people read: the game meant may be another", lines=lines)

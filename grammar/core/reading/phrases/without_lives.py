"""Lines about the lives of those who have none, while others may have some."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import SideId
from grammar.said import Listed, Value, listed, quoting
from grammar.sentences.base import Node


def with_lives(reader: Reader, node: Node, side: SideId) -> None:
    """Raises Senseless where lives are counted of a side that has none; what another has lost can only score for it."""
    if not any(each.who.side == side for each in reader.lives):
        hint = quoting(
            "Let each life that is lost score: that player loses a life and {side} score 1 point. "
            "And say here: more points wins",
            side=side.key,
        )
        more = quoting("Only {who} have lives, and those of {side} are counted here.", who=_who(reader), side=side.key)
        raise none_of_these(reader, node, hint, more)


def none_of_these(reader: Reader, node: Node, instead: Value, title: Value | None = None) -> Senseless:
    """Nobody has lives, or others than those of whom a line speaks: to give these some makes it another game."""
    if not reader.lives:
        return Senseless(node, "Nobody of these has lives.", 'Add to sides: "each player has 3 lives".')
    return Senseless(node, title or quoting("Only {who} have lives.", who=_who(reader)), instead)


def _who(reader: Reader) -> Listed:
    """The sides whose players have lives."""
    return listed(sorted({each.who.side.key for each in reader.lives}))

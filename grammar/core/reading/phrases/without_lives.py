"""Lines about the lives of those who have none, while others may have some."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import SideId
from grammar.sentences.base import Node


def with_lives(reader: Reader, node: Node, side: SideId) -> None:
    """Raises Senseless where lives are counted of a side that has none; what another has lost can only score for it."""
    if not any(each.who.side == side for each in reader.lives):
        score = f"Let each life that is lost score: that player loses a life and {side.key} score 1 point"
        more = f", and those of {side.key} are counted here"
        raise none_of_these(reader, node, more, f"{score}. And say here: more points wins")


def none_of_these(reader: Reader, node: Node, more: str, instead: str) -> Senseless:
    """Nobody has lives, or others than those of whom a line speaks: to give these some makes it another game."""
    if not reader.lives:
        return Senseless(node, "Nobody of these has lives.", 'Add to sides: "each player has 3 lives".')
    who = " and ".join(sorted({each.who.side.key for each in reader.lives}))
    return Senseless(node, f"Only {who} have lives{more}.", instead)

"""Fouls."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.base import Node, Np, spoken


@frozen
class Fouls(Node):
    """Such as "a player fouls": what follows is for that player, or for that side."""

    who: Np

    def words(self) -> str:
        return spoken(self.who, "fouls")

"""What becomes of targets: of all of a side at once, or of one that does not fall."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.base import Node, Np, spoken
from grammar.sentences.determiners import ONE


@frozen
class StandAgain(Node):
    """Such as "all its pins stand up again", "a pin of that side stands up again": of those that are down."""

    what: Np

    def words(self) -> str:
        one = self.what.determiner in ONE
        return spoken(self.what, "stands up again" if one else "stand up again")


@frozen
class StaysAsItIs(Node):
    """What was hit does not fall, or is put up again at once."""

    def words(self) -> str:
        return "it stays as it is"

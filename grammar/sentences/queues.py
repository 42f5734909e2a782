"""Who waits in a queue, and who frees them."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.attempting import Pace
from grammar.sentences.base import Node, Np, Quantity, detail, spoken


@frozen
class Queued(Node):
    """Such as "the first in the catcher's queue", "the last on the far bench"."""

    determiner: str = field(eq=False)
    end: str
    number: Quantity | None
    preposition: str = field(eq=False)
    where: Np

    def words(self) -> str:
        return spoken("the", self.end, self.number, self.preposition, self.where)


@frozen
class AllQueued(Node):
    """Such as "all in the thrower's queue", "all on the far bench"."""

    determiner: str
    preposition: str = field(eq=False)
    where: Np

    def words(self) -> str:
        return spoken(self.determiner, self.preposition, self.where)


@frozen
class Free(Node):
    """Such as "the teacher frees the first in each queue, 1 times a minute", "players free frozen players"; "2 players
    free …" do it together."""

    number: Quantity | None
    who: Np
    verb: str = field(eq=False)
    queued: Queued | AllQueued | Np
    pace: Pace | None = field(default=None)

    def words(self) -> str:
        return spoken(self.number, self.who, self.verb, self.queued) + detail(self.pace)

"""Stopping a ball: who stands before what, and what is said of a ball that is blocked."""

from __future__ import annotations

from grammar.frozen import field, frozen
from grammar.sentences.base import Node, Np, Quantity, spoken


@frozen
class Blocks(Node):
    """Such as "keepers block shots at the goals or the bells with the body", "1 player stands before each cone"."""

    count: Quantity | None
    who: Np
    verb: str
    what: Np
    also: Np | None
    means: str | None = None

    def words(self) -> str:
        several = self.count.whole != 1 if self.count else self.who.determiner not in ("a", "an", "each", "every")
        verb = ("stand before" if several else "stands before") if self.stands else "block" if several else "blocks"
        at = None if self.stands else "shots at"
        return spoken(self.count, self.who, verb, at, self.what, self.also and "or", self.also, self.means)

    @property
    def stands(self) -> bool:
        """Whether it is said as "stands before"."""
        return self.verb.endswith("before")


@frozen
class Blocked(Node):
    """Such as "a ball is blocked": somebody before the target stops it, and nothing is hit."""

    what: Np
    verb: str = field(eq=False)

    def words(self) -> str:
        return spoken(self.what, "is blocked")

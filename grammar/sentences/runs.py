"""Successes in a row."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.sentences.base import Name, Node, Quantity, spoken


@frozen
class InARow(Node):
    """Such as "5 passes in a row": none of a side's has failed since it had none."""

    number: Quantity
    what: Name

    def words(self) -> str:
        return spoken(self.number, self.what, "in a row")


@frozen
class CountedRuns(Node):
    """How often players of a side have run; `with_each`: so often with each of them."""

    with_each: str | None = None

    def words(self) -> str:
        return spoken("times", self.with_each)


@frozen
class OnlyAfterRow(Node):
    """Such as "only after 5 passes in a row": what a side has to have done before."""

    number: Quantity
    what: Name

    def words(self) -> str:
        return spoken("only after", self.number, self.what, "in a row")

"""Successes in a row: what follows from so many, and what may be tried only after them."""

from __future__ import annotations

from grammar.core.guards import Compare, Relation, Row
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.runs import InARow
from grammar.core.values import SideId
from grammar.said import quoting, write
from grammar.sentences import runs

MOST_IN_A_ROW = 20  # our choice: no round of a lesson sees longer ones


def run_of(reader: Reader, said: runs.InARow | runs.OnlyAfterRow, side: SideId, least: int = 2) -> InARow:
    """The successes of a side of which a phrase speaks. Raises Senseless."""
    skills, number = reader.shot(said.what), said.number
    if not skills:
        raise Senseless(said.what, "Nobody counts {what} in a row.", write("5 passes in a row"), what=said.what.text)
    if number.value != number.whole or not least <= number.whole <= MOST_IN_A_ROW:
        hint = quoting("Write a number from {least} to {most}.", least=least, most=MOST_IN_A_ROW)
        raise Senseless(number, "{number} in a row is no run.", hint, number=number.words())
    return InARow(side, frozenset(skills), number.whole)


def after_row(reader: Reader, said: runs.OnlyAfterRow, side: SideId) -> Compare:
    """That the side has had so many in a row."""
    run = run_of(reader, said, side, least=1)
    return Compare(Row(run), Relation.AT_LEAST, run.number)

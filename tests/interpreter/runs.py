"""Successes in a row as the second reader counts them: for each line that asks for some, for each side."""

from __future__ import annotations

from grammar.sentences import runs, when
from tests.interpreter.board import Board
from tests.interpreter.deeds import REACHED, Deed
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet

Row = tuple[when.When, str]


@remembered
def rows_of(sheet: Sheet) -> list[Row]:
    """Every line about a row, with every side."""
    lines = (rule for rule in sheet.said(when.When) if isinstance(rule.event, runs.InARow))
    return [(rule, side) for rule in lines for side in sheet.sides]


def asked(rule: when.When) -> int:
    """How many a line asks for."""
    assert isinstance(rule.event, runs.InARow)
    return rule.event.number.whole


def count_row(sheet: Sheet, deed: Deed, board: Board) -> None:
    """One more, or none any more."""
    for number, (rule, side) in enumerate(rows_of(sheet)):
        assert isinstance(rule.event, runs.InARow)
        if side == deed.side and deed.skill in sheet.stuff(rule.event.what).skills:
            board.rows[number] = min(board.rows[number] + 1, asked(rule)) if deed.outcome == REACHED else 0

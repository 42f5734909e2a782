"""Successes in a row as the second reader counts them: for each line that asks for some, for each side."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import attempting, play, runs, when
from tests.interpreter.board import Board
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet

Asking = when.When | runs.OnlyAfterRow
Row = tuple[Asking, str]


@remembered
def rows_of(sheet: Sheet) -> list[Row]:
    """Every line about a row, and every row that is asked for before something may be tried, with every side."""
    lines: list[Asking] = [rule for rule in sheet.said(when.When) if isinstance(rule.event, runs.InARow)]
    return [(asking, side) for asking in (*lines, *_before(sheet)) for side in sheet.sides]


def _before(sheet: Sheet) -> Iterator[runs.OnlyAfterRow]:
    """What is asked for before something may be tried, each once."""
    found = []
    for line in (*sheet.said(attempting.Attempt), *sheet.said(play.Touch), *sheet.said(play.Take)):
        found += [each for each in line.details if isinstance(each, runs.OnlyAfterRow)]
    yield from {key_of(sheet, each): each for each in reversed(found)}.values()


def event_of(asking: Asking) -> runs.InARow | runs.OnlyAfterRow:
    """The phrase that speaks of the row."""
    said = asking.event if isinstance(asking, when.When) else asking
    assert isinstance(said, runs.InARow | runs.OnlyAfterRow)
    return said


def key_of(sheet: Sheet, asking: Asking) -> tuple[str, ...]:
    """What is counted, in words: two that ask alike count alike."""
    said = event_of(asking)
    skills = "+".join(sorted(sheet.stuff(said.what).skills))
    return (str(said.number.whole), skills, *(("asked",) if isinstance(said, runs.OnlyAfterRow) else ()))


def asked(asking: Asking) -> int:
    """How many a line asks for."""
    return event_of(asking).number.whole


def is_full(sheet: Sheet, after: runs.OnlyAfterRow, side: str, board: Board) -> bool:
    """Whether a side has had so many in a row."""
    rows = ((key_of(sheet, each), of) for each, of in rows_of(sheet))
    return board.rows[list(rows).index((key_of(sheet, after), side))] >= asked(after)


def lose_rows(sheet: Sheet, side: str, board: Board) -> None:
    """A side that has to give the ball away begins anew."""
    for number, (asking, of) in enumerate(rows_of(sheet)):
        if of == side and isinstance(asking, runs.OnlyAfterRow):
            board.rows[number] = 0

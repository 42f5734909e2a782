"""What a deed does to the successes in a row."""

from __future__ import annotations

from grammar.sentences import runs
from tests.interpreter.board import Board
from tests.interpreter.deeds import REACHED, TOUCHING, Deed
from tests.interpreter.names import SENT
from tests.interpreter.rows import asked, event_of, key_of, lose_rows, rows_of
from tests.interpreter.sheet import Sheet
from tests.interpreter.turns_run import count_run


def count_row(sheet: Sheet, deed: Deed, board: Board) -> None:
    """One more, or none any more; what is asked for begins anew with who makes use of it, or gives the ball away."""
    count_run(sheet, deed, board)
    if deed.skill == TOUCHING and deed.ball is not None and board.balls[deed.ball].spot != deed.came:
        assert deed.aim.concerned is not None
        lose_rows(sheet, deed.aim.concerned, board)
    for number, (asking, side) in enumerate(rows_of(sheet)):
        one_of_them = deed.skill in sheet.stuff(event_of(asking).what).skills
        if side != deed.side or not (one_of_them or (isinstance(asking, runs.OnlyAfterRow) and deed.skill in SENT)):
            continue
        uses = deed.after is not None and key_of(sheet, deed.after) == key_of(sheet, asking)
        more = one_of_them and deed.outcome == REACHED and not uses
        board.rows[number] = min(board.rows[number] + 1, asked(asking)) if more else 0

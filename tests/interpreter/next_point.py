"""Who comes back with the next point: all who wait where a line says so, before anybody goes who will wait there."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.sentences import freezing, play, then, when
from tests.interpreter.board import IN, Board
from tests.interpreter.events import Settled
from tests.interpreter.frozen import frozen_spot
from tests.interpreter.hours import points_are_over
from tests.interpreter.people import waits_there
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of


def with_the_point(sheet: Sheet, settled: Sequence[Settled], board: Board) -> None:
    """Those who waited for it come back, where a side scores."""
    said = [each.said for each in settled if isinstance(each.said, then.Scores)]
    if points_are_over(sheet, board) or not any(each.verb == "scores" for each in said):
        return
    for number, pupil in enumerate(board.pupils):
        if pupil.where != IN and _waits_for_it(sheet, number, board):
            board.go(number, pupil.side, pupil.role, IN)


def _waits_for_it(sheet: Sheet, number: int, board: Board) -> bool:
    pupil = board.pupils[number]
    backs = [each for each in sheet.said(play.ComesBack) if isinstance(each.time, str)]
    if any(waits_there(sheet, each.where, pupil) for each in backs):
        return True
    frozen_ones = any(isinstance(each.time, str) for each in sheet.said(freezing.FrozenBack))
    if frozen_ones and pupil.where == frozen_spot(pupil.side):
        return True
    said = [each for rule in sheet.said(when.When) for each in rule.consequences]
    waits = [each for each in said if isinstance(each, then.Waits)]
    until = {place_of(sheet, each.where) for each in waits if isinstance(each.until, str)}
    return not isinstance(pupil.where, str) and pupil.where.place in until

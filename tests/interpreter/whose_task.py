"""Whose task a line of play is, and whether it may be followed now."""

from __future__ import annotations

from grammar.sentences import attempting, play
from grammar.sentences.base import Np
from grammar.sentences.runs import OnlyAfterRow
from tests.interpreter.board import Board
from tests.interpreter.claims import spoken_of, true
from tests.interpreter.hours import is_now
from tests.interpreter.rows import is_full
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose


def acts(sheet: Sheet, sentence: attempting.Attempt | play.Touch | play.Take, side: str, role: str) -> bool:
    """Whether a line of play is for players of a side and role; a role with a line of its own plays only that."""
    who = sheet.folk(sentence.who)
    if who is None or not _of_side(sheet, sentence.who, side) or who.side not in (None, side):
        return False
    if who.role is not None:
        return who.role == role
    lines = (*sheet.said(attempting.Attempt), *sheet.said(play.Touch), *sheet.said(play.Take), *sheet.said(play.Idle))
    lines = tuple(each for each in lines if getattr(each, "where", None) is None)  # whoever waits has no task in play
    own = (each.who for each in lines if (f := sheet.folk(each.who)) is not None and f.role == role)
    return role == "" or not any(_of_side(sheet, each, side) for each in own)


def _of_side(sheet: Sheet, phrase: Np, side: str) -> bool:
    said = whose(sheet, phrase)
    return said.side == side if isinstance(said, Of) else True


def is_open(sheet: Sheet, sentence: attempting.Attempt | play.Touch | play.Take, side: str, board: Board) -> bool:
    """Whether a line that speaks of "only when" may be followed now."""
    spans = [each.span_of_time for each in sentence.details if isinstance(each, attempting.OnlyIn)]
    only = next((each for each in sentence.details if isinstance(each, attempting.OnlyWhen)), None)
    if (row := asks(sentence)) is not None and not is_full(sheet, row, side, board):
        return False
    return all(is_now(sheet, span, board) for span in spans) and (
        only is None or true(sheet, only.condition, spoken_of(sheet, side), board)
    )


def asks(sentence: attempting.Attempt | play.Touch | play.Take) -> OnlyAfterRow | None:
    """The row that a line asks for before it may be followed."""
    return next((each for each in sentence.details if isinstance(each, OnlyAfterRow)), None)

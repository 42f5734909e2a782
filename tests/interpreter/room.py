"""How much room there is where the rules send players: "at most 2 players there"."""

from __future__ import annotations

from grammar.sentences.base import Np
from grammar.sentences.space import AtMostThere
from tests.interpreter.board import Board, Spot
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose


def finds_room(sheet: Sheet, side: str, role: str, where: str | Spot, board: Board) -> bool:
    """Whether one more player of a side and role finds room somewhere."""
    if isinstance(where, str) or where.place not in sheet.places:
        return True
    for rule in sheet.places[where.place].rooms:
        if meant(sheet, rule.who, side, role):
            there = [each for each in board.pupils if each.where == where]
            most = rule.most.whole if isinstance(rule, AtMostThere) else 0
            if sum(meant(sheet, rule.who, each.side, each.role) for each in there) >= most:
                return False
    return True


def meant(sheet: Sheet, phrase: Np, side: str, role: str) -> bool:
    """Whether a phrase means players of a side and role."""
    who, said = sheet.folk(phrase), whose(sheet, phrase)
    if who is None or (isinstance(said, Of) and said.side != side):
        return False
    return who.side in (None, side) and who.role in (None, role)

"""How much room there is where the rules send players: "at most 2 players there"."""

from __future__ import annotations

from grammar.sentences.base import Np
from grammar.sentences.space import AtMostThere, OnlyThere
from tests.interpreter.board import Board, Pupil, Spot
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose


def finds_room(sheet: Sheet, side: str, role: str, where: str | Spot, board: Board) -> bool:
    """Whether one more player of a side and role finds room somewhere."""
    if isinstance(where, str) or where.place not in sheet.places:
        return True
    for rule in sheet.places[where.place].rooms:
        if isinstance(rule, OnlyThere):
            if not _admitted(sheet, rule, where.owner, side, role):
                return False
        elif meant(sheet, rule.who, side, role):
            there = [each for each in board.pupils if each.where == where]
            most = rule.most.whole * sheet.places[where.place].times if isinstance(rule, AtMostThere) else 0
            if sum(meant(sheet, rule.who, each.side, each.role) for each in there) >= most:
                return False
    return True


def barred(sheet: Sheet, spot: Spot, pupil: Pupil) -> bool:
    """Whether a pupil may not go to a spot."""
    return spot.place in sheet.places and shut_to(sheet, spot.place, spot.owner or "", pupil)


def shut_to(sheet: Sheet, place: str, owner: str, pupil: Pupil) -> bool:
    """Whether an area, of the side `owner` where each has its own, is not for a pupil."""
    found = sheet.places[place]
    for rule in found.rooms:
        if isinstance(rule, OnlyThere):
            of = owner if found.owners != (None,) else None
            if not _admitted(sheet, rule, of, pupil.side, pupil.role):
                return True
        elif not isinstance(rule, AtMostThere) and meant(sheet, rule.who, pupil.side, pupil.role):
            return True
    return False


def _admitted(sheet: Sheet, rule: OnlyThere, owner: str | None, side: str, role: str) -> bool:
    """Whether a player is one of those who alone enter; of the side whose the area is, if no other is named."""
    who, said = sheet.folk(rule.who), whose(sheet, rule.who)
    assert who is not None
    named = said.side if isinstance(said, Of) else who.side
    return (named or owner) in (None, side) and who.role in (None, role)


def meant(sheet: Sheet, phrase: Np, side: str, role: str) -> bool:
    """Whether a phrase means players of a side and role."""
    who, said = sheet.folk(phrase), whose(sheet, phrase)
    if who is None or (isinstance(said, Of) and said.side != side):
        return False
    return who.side in (None, side) and who.role in (None, role)

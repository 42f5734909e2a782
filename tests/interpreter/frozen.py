"""Pupils who froze: each side's stand in a spot of no area, in no order, until somebody frees them."""

from __future__ import annotations

from grammar.sentences.base import Np
from tests.interpreter.board import AT, Board, Spot
from tests.interpreter.names import Frozen
from tests.interpreter.sheet import Sheet

PLACE = "frozen"


def frozen_spot(side: str) -> Spot:
    """Where the pupils of a side stand who froze."""
    return Spot(PLACE, AT, side)


def means_frozen(sheet: Sheet, phrase: object) -> Frozen | None:
    """The frozen ones of whom a phrase speaks."""
    meant = sheet.meaning(phrase.name) if isinstance(phrase, Np) else None
    return meant if isinstance(meant, Frozen) else None


def frozen_of(sheet: Sheet, meant: Frozen, sides: tuple[str, ...], board: Board) -> list[int]:
    """The frozen pupils of some sides, and of the role that is named."""
    wanted = sides if meant.side is None else (meant.side,)
    there = board.waiting(frozen_spot(side) for side in wanted)
    return [number for number in there if meant.role in (None, board.pupils[number].role)]


def any_of_them(there: list[int], board: Board) -> list[int]:
    """One of each side, role and number of lives: nobody says which of them it is, and those alike are alike."""
    return list({board.pupils[number]._replace(turn=0): number for number in there}.values())

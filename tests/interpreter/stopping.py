"""Who stops a ball before what it is sent at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from grammar.sentences.base import Np
from grammar.sentences.blocking import Blocks
from tests.interpreter.board import Board, Thing
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import Of, whose

if TYPE_CHECKING:
    from tests.interpreter.deeds import Deed


def blocked_by(sheet: Sheet, deed: Deed, board: Board) -> list[int]:
    """The pupils in play who block what is aimed at: of the side whose it is, of nobody's any other than who acts."""
    if deed.aim.thing is None or deed.aim.what not in ("target", "ring"):
        return []
    thing = board.things[deed.aim.thing]
    found: list[int] = []
    for line in sheet.said(Blocks):
        who, said = sheet.folk(line.who), whose(sheet, line.who)
        if who is None or not any(_is_of(sheet, what, thing) for what in (line.what, line.also) if what is not None):
            continue
        for number in board.playing((thing.owner,) if thing.owner else sheet.sides, who.role):
            side = board.pupils[number].side
            named = said.side if isinstance(said, Of) else who.side
            if side != deed.side and named in (None, side):
                found.append(number)
    return found


def _is_of(sheet: Sheet, phrase: Np, thing: Thing) -> bool:
    """Whether a phrase speaks of a thing, as far as it says whose."""
    of = whose(sheet, phrase)
    return thing.kind in sheet.stuff(phrase).kinds and (not isinstance(of, Of) or thing.owner == of.side)

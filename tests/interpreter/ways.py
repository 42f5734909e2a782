"""The ways on which pupils carry things."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import attempting, play
from grammar.sentences.base import Np
from tests.interpreter.board import Load, Spot
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import spot
from tests.interpreter.whose import EVERY, OTHERS, Of, whose


def ways(sheet: Sheet, sentence: play.Take, side: str) -> Iterator[Load]:
    """Every kind that a pupil of a side may take by a line, with where from and where to."""
    (there,) = _spots(sheet, sentence.goal_part, sentence.goal, side)
    for start in _spots(sheet, sentence.start_part, sentence.start, side):
        if start != there:
            kinds = {kind for phrase in sentence.phrases for kind in sheet.stuff(phrase).kinds}
            yield from (Load(kind, start, there) for kind in sorted(kinds))


def at_once(sentence: play.Take) -> int:
    """How many are on the way at most, so that the next has to wait till one is back; 0: all."""
    return next((each.number.whole for each in sentence.details if isinstance(each, attempting.AtATime)), 0)


def _spots(sheet: Sheet, part: str | None, phrase: Np, side: str) -> list[Spot]:
    said = whose(sheet, phrase)
    sides = (said.side,) if isinstance(said, Of) else sheet.others(side) if said == OTHERS else (side,)
    sides = sheet.sides if said == EVERY else sides
    return list(dict.fromkeys(spot(sheet, part, phrase, each) for each in sides))

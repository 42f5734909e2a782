"""How many points each side has at the start; all players of one together, where each plays for themselves."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import then, when
from grammar.sentences.base import Np, SideNamed, SideRef
from grammar.sentences.points import BeginsPoints
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import POINTS_USUALLY, Sheet


def points_at_first(sheet: Sheet) -> Iterator[int]:
    """In the order of the sides."""
    for side in sheet.sides:
        said = [line for line in sheet.declared(BeginsPoints) if _means(sheet, line, side)]
        yield sum(line.number.whole * (sheet.players[side] if sheet.solo else 1) for line in said)


@remembered
def most_points(sheet: Sheet, side: str) -> int:
    """How far the points of a side are counted: as far as any sentence asks, or as usual from where it begins."""
    begin, most = list(points_at_first(sheet))[sheet.sides.index(side)], sheet.points_to
    rules = [each for rule in sheet.said(when.When) for each in rule.consequences]
    rises = any(isinstance(each, then.Scores) and each.verb == "scores" for each in rules)
    return most if most > begin else begin + (most or POINTS_USUALLY) * rises


def _means(sheet: Sheet, line: BeginsPoints, side: str) -> bool:
    if isinstance(line.who, SideRef) or sheet.solo:
        return True
    assert isinstance(line.who, Np | SideNamed)
    return sheet.side_meant(sheet.meaning(line.who.name)) == side

"""Who has more of something when the round is over, and what counts as points only then."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import claims, finish, points
from grammar.sentences.base import Name
from tests.interpreter.board import Board
from tests.interpreter.claims import counted
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import place_of
from tests.interpreter.whose import Of, side_said


def leader(sheet: Sheet, result: finish.MoreWins, board: Board) -> str | None:
    """The one side that has most (or fewest), None where none does."""
    sign = 1 if result.more == "more" else -1
    numbers = {side: sign * _has(sheet, result, side, board) for side in sheet.sides}
    best = [side for side, number in numbers.items() if number == max(numbers.values())]
    return best[0] if len(best) == 1 else None


def _has(sheet: Sheet, result: finish.MoreWins, side: str, board: Board) -> int:
    there, _ = counted(sheet, result.counted, side, board)
    if isinstance(result.counted, claims.CountedPoints):
        there += sum(_worth(sheet, line, side, board) for line in sheet.said(points.AtTheEnd))
    return there


def _worth(sheet: Sheet, line: points.AtTheEnd, side: str, board: Board) -> int:
    """What a side has by one line: of each kind so many times its worth."""
    if line.side is not None and side_said(sheet, line.side) != Of(side):
        return 0
    kinds = ((what, each) for what, each in _kinds(line) if line.side is not None or not _of_others(sheet, what, side))
    return sum(each * counted(sheet, what, side, board)[0] for what, each in kinds)


def _of_others(sheet: Sheet, what: claims.CountedWhat, side: str) -> bool:
    """Whether the place named is one that this side has not, and that is not for all."""
    if not isinstance(what, claims.Counted) or not isinstance(what.state, claims.Placed):
        return False
    owners = sheet.owners_of(place_of(sheet, what.state.where))
    return side not in owners and None not in owners


def _kinds(line: points.AtTheEnd) -> Iterator[tuple[claims.CountedWhat, int]]:
    if isinstance(line.first.counted, claims.CountedLives):
        yield line.first.counted, line.first.points.whole
        return
    assert isinstance(line.first.counted, claims.Counted)
    said: list[tuple[Name, int]] = [(each.what.name, each.points.whole) for each in line.others]
    yield line.first.counted, line.first.points.whole
    yield from ((claims.Counted(what, line.first.counted.state), each) for what, each in said)

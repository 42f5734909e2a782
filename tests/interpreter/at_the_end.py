"""Who has more of something when the round is over, and what counts as points only then."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import claims, finish, points
from grammar.sentences.base import Name
from tests.interpreter.board import Board
from tests.interpreter.claims import counted
from tests.interpreter.names import Folk, Frozen
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
    owned = ((what, each, owner) for what, each in kinds for owner in _whose(sheet, line, what, side))
    return sum(each * counted(sheet, what, owner, board)[0] for what, each, owner in owned)


def _whose(sheet: Sheet, line: points.AtTheEnd, what: claims.CountedWhat, side: str) -> tuple[str, ...]:
    """Whose pupils or things count for a side: those of the side that is named, and of frozen ones, and of pupils who
    wait or are out, everybody's where the line says for whom."""
    meant = sheet.meaning(what.what) if isinstance(what, claims.Counted) else None
    if isinstance(meant, Frozen | Folk) and meant.side is not None:
        return (meant.side,)
    away = isinstance(meant, Frozen) or isinstance(getattr(what, "state", None), claims.Gone | claims.Placed)
    return sheet.sides if isinstance(meant, Frozen | Folk) and away and line.side is not None else (side,)


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

"""What happens when a moment of the clock comes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.sentences import play, then, time, when
from tests.interpreter.begin_points import most_points
from tests.interpreter.board import Board, State
from tests.interpreter.events import Scene, holding
from tests.interpreter.follows import follow
from tests.interpreter.hours import at_s, bell_s, goes_on, moments, points_are_over
from tests.interpreter.sheet import Sheet


def strikes(sheet: Sheet, board: Board, begin: State) -> Iterator[tuple[str, Board]]:
    """The next moment, whenever it comes: a word that any telling must hold, and the board after it."""
    known = moments(sheet)
    counted = board.clock < len(known)
    if not counted and not goes_on(sheet):
        return
    if counted and known[board.clock] == bell_s(sheet):
        yield "over", _time_is_over(sheet, board)
        return
    events: dict[tuple[bool, float], list[tuple[when.When, bool, int]]] = {}
    for rule in sheet.said(when.When):
        event = rule.event
        if isinstance(event, time.OfClock):
            again, first = isinstance(event, time.EveryTime), at_s(sheet, event)
            due = again and (not counted or known[board.clock] % first == 0)
            if due or (counted and not again and first == known[board.clock]):
                events.setdefault((again, first), []).append((rule, True, 0))
    for after in _all(sheet, list(events.values()), board, board.copy(), begin):
        after.clock += int(counted)
        yield ("over" if counted else "every"), after


def _time_is_over(sheet: Sheet, board: Board) -> Board:
    """Level and as high as anybody counts: the next point could not be seen, so that both begin anew."""
    after = board.copy()
    after.clock += 1
    if points_are_over(sheet, after):
        return after
    scored = [each for rule in sheet.said(when.When) for each in rule.consequences if isinstance(each, then.Scores)]
    most = max((each.points.whole for each in scored if each.verb == "scores"), default=0)
    most *= max(({"count double": 2, "count three times": 3}[x.times] for x in sheet.said(play.PointsCount)), default=1)
    if len(set(after.points)) == 1 and after.points[0] > most_points(sheet, sheet.sides[0]) - most:
        after.points = [0] * len(after.points)
    return after


def _all(
    sheet: Sheet, events: Sequence[list[tuple[when.When, bool, int]]], before: Board, board: Board, begin: State
) -> Iterator[Board]:
    """Lines of different times that come together are asked how things stood before any of them."""
    if not events:
        yield board
        return
    scene = Scene(None, None, everybody=True)
    for after in follow(sheet, holding(sheet, scene, events[0], before), scene, board, begin):
        yield from _all(sheet, events[1:], before, after.copy(), begin)

"""What happens when a moment of the clock comes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.sentences import time, when
from tests.interpreter.board import Board, State
from tests.interpreter.events import Scene, holding
from tests.interpreter.follows import follow
from tests.interpreter.hours import at_s, goes_on, moments
from tests.interpreter.sheet import Sheet


def strikes(sheet: Sheet, board: Board, begin: State) -> Iterator[tuple[str, Board]]:
    """The next moment, whenever it comes: a word that any telling must hold, and the board after it."""
    known = moments(sheet)
    counted = board.clock < len(known)
    if not counted and not goes_on(sheet):
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

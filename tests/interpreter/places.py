"""Who changes places with whom: a player and the first who waits, all with all, or passer and catcher."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from attrs import evolve

from grammar.sentences import queues, then
from grammar.sentences.base import Np
from tests.interpreter.board import IN, Board, Spot, State
from tests.interpreter.events import Scene
from tests.interpreter.people import people, queue_sides, sides_of_all
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import spot


def change_places(sheet: Sheet, said: then.ChangesPlaces, scene: Scene, board: Board, begin: State) -> Iterator[Board]:
    """The boards after it; that needs no room, for each takes the place of another."""
    if said.number is not None:
        yield _so_many(sheet, said, said.number.whole, scene, board.copy())
        return
    for chosen in people(sheet, said.who, scene, board):
        after = board.copy()
        if isinstance(said.other, queues.AllQueued):
            assert isinstance(said.who, Np)
            sides = sides_of_all(sheet, said.who, scene)
            _all(sheet, said.other, chosen, sides, scene, after, begin)
        elif chosen:
            yield from _one(sheet, said.other, chosen[0], scene, after)
            continue
        yield after


def _one(sheet: Sheet, other: queues.Queued | then.Who, number: int, scene: Scene, board: Board) -> Iterator[Board]:
    """With nobody waiting the one comes straight back."""
    for second in people(sheet, other, scene, board, board.pupils[number].side):
        after = board.copy()
        if second and (scene.loser is not None or not {number, *second} & set(board.lost)):
            _exchange(other, number, second, after)
        yield after


def _exchange(other: queues.Queued | then.Who, number: int, second: tuple[int, ...], board: Board) -> None:
    mover = board.pupils[number]
    there = board.pupils[second[0]]
    if mover.where == there.where == IN:
        board.go(second[0], mover.side, mover.role, IN)
        board.go(number, there.side, there.role, IN)
    elif isinstance(other, queues.Queued):
        board.go(second[0], there.side, there.role, mover.where)
        board.go(number, mover.side, mover.role, there.where)
    else:
        board.pupils[number] = mover._replace(where=there.where, turn=there.turn, role=there.role)
        board.pupils[second[0]] = there._replace(where=mover.where, turn=mover.turn, role=mover.role)


def _all(
    sheet: Sheet,
    other: queues.AllQueued,
    going: tuple[int, ...],
    sides: tuple[str, ...],
    scene: Scene,
    board: Board,
    begin: State,
) -> None:
    """All go to the end, and as many of their own side come in as played at the start, of each role."""
    there = {side: people(sheet, other, scene, board, side)[0] for side in sides}
    waiting = [each for side in sides for each in there[side] if board.pupils[each].side == side]
    places = {number: _own(sheet, other, board.pupils[number].side, scene) for number in going}
    for number in going:
        pupil = board.pupils[number]
        board.go(number, pupil.side, pupil.role, places[number])
    room = Counter((each.side, each.role) for each in begin.pupils if each.where == IN)
    for number in (*waiting, *going):
        pupil = board.pupils[number]
        if room[pupil.side, pupil.role] > 0:
            room[pupil.side, pupil.role] -= 1
            board.go(number, pupil.side, pupil.role, IN)


def _so_many(sheet: Sheet, said: then.ChangesPlaces, number: int, scene: Scene, board: Board) -> Board:
    """Of each side and role that is meant so many go behind those who wait, and so many of these come in."""
    assert isinstance(said.other, queues.Queued) and isinstance(said.who, Np)
    (everybody,) = people(sheet, evolve(said.who, determiner="all"), scene, board)
    for side in dict.fromkeys(board.pupils[each].side for each in everybody):
        place = _own(sheet, said.other, side, scene)
        (there,) = people(sheet, queues.AllQueued("all", "in", said.other.where), scene, board, side)
        waiting = [each for each in there if board.pupils[each].side == side]
        going = [each for each in everybody if board.pupils[each].side == side][:number]
        for each in going:
            board.go(each, side, board.pupils[each].role, place)
        for each in [*waiting, *going][:number]:
            board.go(each, side, board.pupils[each].role, IN)
    return board


def _own(sheet: Sheet, other: queues.AllQueued | queues.Queued, side: str, scene: Scene) -> Spot:
    sides = queue_sides(sheet, other.where, scene, side)
    return spot(sheet, None, other.where, side if side in sides else sides[0])

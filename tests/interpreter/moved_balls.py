"""Balls that come in, and balls that a count that came true sends somewhere."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import then
from grammar.sentences.base import Np
from tests.interpreter.board import Board
from tests.interpreter.events import Scene
from tests.interpreter.hours import WITH_THE_TEACHER
from tests.interpreter.landing import goal
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import half


def come_in(sheet: Sheet, said: then.ComesIn, board: Board) -> Iterator[Board]:
    """Balls of the teacher come in one by one, to each half in turn; which side has the first is open."""
    whole = said.determiner in ("all", "every", "each")
    many = len(board.balls) if whole else said.number.whole if said.number else 1
    halves = list(dict.fromkeys(half(sheet, side) for side in sheet.sides))
    for first in range(len(halves)):
        after = board.copy()
        for kind in sorted(sheet.stuff(said.name).kinds):
            with_teacher = [
                n for n, each in enumerate(after.balls) if (each.kind, each.spot) == (kind, WITH_THE_TEACHER)
            ]
            for turn, number in enumerate(with_teacher[:many]):
                after.balls[number] = after.balls[number]._replace(spot=halves[(first + turn) % len(halves)])
        yield after


def send_balls(sheet: Sheet, said: then.MovesTo, scene: Scene, board: Board) -> Iterator[Board]:
    """Where a count came true, all balls of the kind go, or any one of them; the ball of a deed lies already."""
    if scene.deed is not None:
        yield board
        return
    assert isinstance(said.who, Np)
    there = goal(sheet, said.place, scene, sent=None, rule=True)
    kinds = sheet.stuff(said.who).kinds
    moving = [number for number, ball in enumerate(board.balls) if ball.kind in kinds and ball.spot != there]
    several = sum(ball.kind in kinds for ball in board.balls) > 1
    if scene.having is not None and several and said.who.determiner != "all":
        moving = [number for number in moving if board.balls[number].spot == half(sheet, scene.having)]
    if said.who.determiner == "all" or not moving:
        for number in moving:
            board.balls[number] = board.balls[number]._replace(spot=there)
        yield board
        return
    for number in {board.balls[number]: number for number in moving}.values():
        after = board.copy()
        after.balls[number] = after.balls[number]._replace(spot=there)
        yield after

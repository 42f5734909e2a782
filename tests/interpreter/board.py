"""Who and what is where: every pupil, ball and thing by itself. No net, no counts, no numbers of places."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import NamedTuple

IN, OUT = "in", "out"
UP, DOWN = "up", "down"
NO_LIFE = -1
AT = "at"


class Spot(NamedTuple):
    """A place, the part of it ("at", "behind", "before", "beside"), and the side whose it is."""

    place: str
    part: str
    owner: str | None


HANDS = Spot("hands", AT, None)  # where a thing is that somebody carries


class Load(NamedTuple):
    """What a pupil carries: one thing of a kind, from where and to where."""

    kind: str
    start: Spot
    goal: Spot


class Pupil(NamedTuple):
    """A pupil: the side and role played for, in play, out or in a spot, the turn there (first is 0), and
    the lives left, 0 where lives are not counted, NO_LIFE for who has lost the last, and the load."""

    side: str
    role: str
    where: str | Spot
    turn: int
    lives: int = 0
    load: Load | None = None


class Ball(NamedTuple):
    """A ball and where it lies."""

    kind: str
    spot: Spot


class Thing(NamedTuple):
    """A thing: up, down or on a step; where it stands by the set-up, or where it was brought."""

    kind: str
    owner: str | None
    how: str | int
    spot: Spot | None
    brought: bool


class State(NamedTuple):
    """All of them, the points of each side in their order, and who has won by a rule ("" while nobody has).

    `clock` counts the moments of the clock that have passed, `rows` successes in a row (`runs.py`);
    `taken` are the lines that hold only the first time and have taken effect; `runs` are those of each side.
    """

    pupils: tuple[Pupil, ...]
    balls: tuple[Ball, ...]
    things: tuple[Thing, ...]
    points: tuple[int, ...]
    won: str
    clock: int = 0
    rows: tuple[int, ...] = ()
    taken: frozenset[str] = frozenset()
    runs: tuple[int, ...] = ()


class Board:
    """A state while a move is made; every pupil, ball and thing keeps its number meanwhile."""

    def __init__(self, state: State) -> None:
        self.pupils = list(state.pupils)
        self.balls = list(state.balls)
        self.things = list(state.things)
        self.points = list(state.points)
        self.won = state.won
        self.clock = state.clock
        self.rows = list(state.rows)
        self.taken = state.taken
        self.runs = list(state.runs)
        self.lost: tuple[int, ...] = ()  # who has lost the last life in this event

    def copy(self) -> Board:
        found = Board.__new__(Board)
        found.pupils, found.balls, found.things = self.pupils[:], self.balls[:], self.things[:]
        found.points, found.won, found.clock = self.points[:], self.won, self.clock
        found.rows, found.taken, found.lost, found.runs = self.rows[:], self.taken, self.lost, self.runs[:]
        return found

    def state(self) -> State:
        """As it stands, nobody reordered."""
        tokens = tuple(self.pupils), tuple(self.balls), tuple(self.things)
        counts = tuple(self.points), self.won, self.clock, tuple(self.rows), self.taken, tuple(self.runs)
        return State(*tokens, *counts)

    def go(self, number: int, side: str, role: str, where: str | Spot) -> None:
        """Send a pupil somewhere; in a spot everybody comes last. What they carry goes back first."""
        load = self.pupils[number].load
        if load is not None:
            self.put_down(number, load.start)
        turn = 0
        if not isinstance(where, str):
            turn = 1 + max((each.turn for each in self.pupils if each.where == where), default=-1)
        self.pupils[number] = Pupil(side, role, where, turn, 0 if where == OUT else self.pupils[number].lives)

    def put_down(self, number: int, where: Spot) -> None:
        """What a pupil carries lies somewhere; things of one kind are alike."""
        pupil = self.pupils[number]
        assert pupil.load is not None
        kind = pupil.load.kind
        thing = next(n for n, each in enumerate(self.balls) if each.kind == kind and each.spot == HANDS)
        self.balls[thing] = self.balls[thing]._replace(spot=where)
        self.pupils[number] = pupil._replace(load=None)

    def playing(self, sides: Iterable[str], role: str | None = None) -> list[int]:
        """The pupils in play of some sides; of every role where none is asked for."""
        return [
            number
            for number, each in enumerate(self.pupils)
            if each.where == IN and each.side in sides and role in (None, each.role)
        ]

    def waiting(self, spots: Iterable[Spot]) -> list[int]:
        """The pupils in some spots, the first to come first."""
        wanted = set(spots)
        there = [n for n, each in enumerate(self.pupils) if isinstance(each.where, Spot) and each.where in wanted]
        return sorted(there, key=lambda number: self.pupils[number].turn)


def in_line(state: State, in_turn: frozenset[str]) -> State:
    """The state with turns counted from 0, and only in the places of whose first or last the sheet speaks."""
    spots = {each.where for each in state.pupils if isinstance(each.where, Spot)}
    if not spots:
        return state
    pupils = list(state.pupils)
    for spot in spots:
        there = sorted((n for n, each in enumerate(pupils) if each.where == spot), key=lambda n: pupils[n].turn)
        for turn, number in enumerate(there):
            pupils[number] = pupils[number]._replace(turn=turn if spot.place in in_turn else 0)
    return state._replace(pupils=tuple(pupils))


def alike(state: State) -> State:
    """The state with those that stand alike in one order, for nobody cares which of them is which."""
    return state._replace(
        pupils=tuple(sorted(state.pupils, key=_order)),
        balls=tuple(sorted(state.balls, key=_order)),
        things=tuple(sorted(state.things, key=_order)),
    )


@cache
def _order(token: tuple[object, ...]) -> tuple[str, ...]:
    return tuple(str(part) for part in token)

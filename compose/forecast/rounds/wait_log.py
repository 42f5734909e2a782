"""Who waits how long: the times of entry of everybody in a queue, in many rounds at once.

First in, first out; but last in, first out of a queue of which every rule lets the last one go.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from compose.forecast.chain.chain import Floats, Longs
from compose.forecast.rounds.fixed_waits import NOWHERE, fixed_minutes
from compose.net.net import Move, Net

Column = NDArray[np.int32]


class WaitLog:
    """Hears of every token that enters or leaves one of the watched places (minutes throughout).

    `rows` and `now` say which rounds the next changes belong to, and when they happen, `by_time` from which place
    somebody comes back by time in each of them. A wait that a line gives a time lasts that time, whenever the draw
    ends it, and none is longer there. A wait that the end of the round cuts off counts as ended there.
    """

    def __init__(self, net: Net, places: Sequence[int], rounds: int) -> None:
        self.places = tuple(places)
        self.rows = np.arange(rounds)
        self.now: Floats = np.zeros(rounds)
        self.by_time: Longs = np.full(rounds, NOWHERE)
        times = fixed_minutes(net)
        self.longest = tuple(times.get(place, math.inf) for place in places)
        self._over = np.full(rounds, math.inf)
        room = max((net.places[place].capacity for place in places), default=0) + 1
        starts = [net.places[place].start for place in places]
        self._last_first = tuple(last_first(net, place) for place in places)
        self._entered = np.zeros((len(places), rounds, room))
        self._count = np.repeat(np.array(starts, dtype=np.int64)[:, None], rounds, axis=1)
        self._first = np.zeros((len(places), rounds), dtype=np.int64)
        self._waits: list[list[Floats]] = [[] for _ in places]
        self._of: list[list[Longs]] = [[] for _ in places]
        self._since: list[list[Floats]] = [[] for _ in places]

    def carried(self, source: int | None, target: int, moved: Column) -> None:
        """Tokens went from a place (None: out of nothing) to a place, one number for each row; negative: back."""
        if source in self.places:
            self._leave(self.places.index(source), moved)
        if target in self.places:
            queue = self.places.index(target)
            self._enter(queue, np.maximum(moved, 0))
            self._leave(queue, np.maximum(-moved, 0))

    def passed(self, place: int, entered: Longs, left: Longs) -> None:
        """So many came to a place and so many left it in one go, one number for each row.

        Whoever waited before leaves first, and may leave before others come: who comes in the same moment
        leaves again only where too few waited.
        """
        queue = self.places.index(place)
        before = np.minimum(left, self._count[queue, self.rows])
        self._leave(queue, before)
        self._enter(queue, entered)
        self._leave(queue, left - before)

    def stop(self, rows: Longs, now: Floats) -> None:
        """These rounds are over: whoever waits has waited until now."""
        self.rows, self.now, self._over[rows] = rows, now, now
        self.by_time = np.full(len(rows), NOWHERE)
        for queue in range(len(self.places)):
            self._leave(queue, self._count[queue, rows])

    def waits(self, place: int) -> tuple[Floats, Longs]:
        """All waits in a place and the round of each, in no order."""
        queue = self.places.index(place)
        if not self._waits[queue]:
            return np.zeros(0), np.zeros(0, dtype=np.int64)
        of = np.concatenate(self._of[queue])
        waits, since = np.concatenate(self._waits[queue]), np.concatenate(self._since[queue])
        return np.minimum(waits, self._over[of] - since), of

    def first_since(self, place: int, rows: Longs) -> Floats:
        """When the first who waits in a place came there, in some rounds; infinite where nobody waits."""
        queue = self.places.index(place)
        entered = self._entered[queue, rows, self._first[queue, rows]]
        return np.where(self._count[queue, rows] > 0, entered, math.inf)

    def _enter(self, queue: int, moved: Longs | Column) -> None:
        room = self._entered.shape[2]
        for turn in range(int(moved.max(initial=0))):
            some = moved > turn
            rows = self.rows[some]
            place = (self._first[queue, rows] + self._count[queue, rows]) % room
            self._entered[queue, rows, place] = self.now[some]
            self._count[queue, rows] += 1

    def _leave(self, queue: int, moved: Longs | Column) -> None:
        room = self._entered.shape[2]
        for turn in range(int(moved.max(initial=0))):
            some = moved > turn
            rows = self.rows[some]
            self._count[queue, rows] -= 1
            first = self._first[queue, rows]
            gone = (first + self._count[queue, rows]) % room if self._last_first[queue] else first
            since = self._entered[queue, rows, gone]
            waited, longest = self.now[some] - since, self.longest[queue]
            told = np.where(self.by_time[some] == self.places[queue], longest, np.minimum(waited, longest))
            kept = waited > 0  # who only passes through, in one move, has not waited
            for log, each in ((self._waits, told), (self._of, rows), (self._since, since)):
                log[queue].append(each[kept])
            if not self._last_first[queue]:
                self._first[queue, rows] = (first + 1) % room


def last_first(net: Net, place: int) -> bool:
    """Whether whoever came last is always the first to go: of some who go, for all go in any order."""
    leaving = [
        effect
        for effect in net.effects
        if isinstance(effect, Move) and effect.source == place and effect.amount is not None
    ]
    return bool(leaving) and all(effect.last for effect in leaving)

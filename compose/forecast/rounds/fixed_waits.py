"""Waits that a line gives a time: "whoever waits on the far bench comes back after 30 s".

The chain lets whoever waits so come back at any moment alike, with that time as the mean, and so do rounds that are
played to stand beside it: how many wait at a time comes out almost the same. What is told of one wait is the time
itself, which nobody passes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from compose.forecast.chain.chain import Floats, Longs
from compose.net.net import Move, Net, Transition
from compose.net.told import CameBack

NOWHERE = -1


def fixed_minutes(net: Net) -> dict[int, float]:
    """The places from which players come back after a time, with that time in minutes."""
    times: dict[int, float] = {}
    for move in net.transitions:
        place, a_minute = place_left(move), move.attempt.said_per_minute
        if place != NOWHERE and a_minute:
            times[place] = min(times.get(place, math.inf), 1 / a_minute)
    return times


def place_left(move: Transition) -> int:
    """The place that is left where a wait is over by time, else `NOWHERE`."""
    if not isinstance(move.told, CameBack):
        return NOWHERE
    return next((effect.source for effect in move.effects if isinstance(effect, Move)), NOWHERE)


class FixedWaits:
    """The moves by which waits are over by time, with the minutes that each takes."""

    def __init__(self, net: Net) -> None:
        times = fixed_minutes(net)
        numbers = [number for number, move in enumerate(net.transitions) if place_left(move) in times]
        self.moves: Longs = np.array(numbers, dtype=np.int64)
        self.places: Sequence[int] = [place_left(net.transitions[number]) for number in numbers]
        self._minutes = np.array([times[place] for place in self.places])

    def due(self, entered: Floats, now: Floats) -> tuple[Floats, Longs]:
        """The minutes until the first comes back in each of some rounds, and the move; `entered` (places, rounds) is
        when the first who waits in each of the places came there, infinite where nobody waits."""
        if not len(self.moves):
            return np.full(len(now), math.inf), np.zeros(len(now), dtype=np.int64)
        left = np.maximum(entered + self._minutes[:, None] - now, 0.0)
        first = left.argmin(axis=0)
        return left[first, np.arange(len(now))], self.moves[first]

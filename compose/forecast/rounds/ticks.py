"""The moments of the clock in rounds that are played at random."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.forecast.chain.chain import Floats, Longs
from compose.net.net import Net


class Ticking:
    """Which moment comes next in each of many rounds; `passed` (rounds,) is how many have passed.

    `parts` (transitions,) are those of the transitions that happen at such a moment, 0 for all others.
    """

    def __init__(self, net: Net, rounds: int) -> None:
        self._schedule = net.schedule
        self._times = np.zeros(0)
        self.passed: Longs = np.zeros(rounds, dtype=np.int64)
        self.parts: Floats = np.array([move.part if move.ticks else 0.0 for move in net.transitions])

    def due(self, rounds: Longs) -> Floats:
        """The minute of the next moment in these rounds; infinite where none comes."""
        if self._schedule is None:
            return np.full(len(rounds), np.inf)
        passed = self.passed[rounds]
        most = int(passed.max(initial=0))
        if most >= len(self._times):
            self._times = np.array([self._schedule.time_s(number) / 60 for number in range(2 * most + 2)])
        return np.asarray(self._times[passed], dtype=np.float64)

    @staticmethod
    def drawn(chances: Floats, chance: np.random.Generator) -> NDArray[np.int64]:
        """One of the transitions for each round, by the chances (transitions, rounds)."""
        reached = np.cumsum(chances, axis=0)
        pick = chance.random(chances.shape[1]) * reached[-1]
        chosen = np.minimum((reached <= pick).sum(axis=0), len(chances) - 1)
        return np.asarray(chosen, dtype=np.int64)

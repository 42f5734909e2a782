"""Runs in turn in rounds that are played at random: each takes about as long as the last, and nobody runs anew.

To draw them like all else, at any moment alike, would make one run in three last less than half its time, and the
first of several sides come in far too soon. Each run asks for so much work, in means of a run: drawn from a gamma law
with the spread of the norms, done at the rate at which runs come about.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.forecast.chain.chain import Bools, Floats, Longs
from compose.net.net import Net


def has_runs_in_turn(net: Net) -> bool:
    """Whether anybody in a game runs in turn."""
    return any(move.attempt.in_turn for move in net.transitions)


class InTurn:
    """The runs that are on the way: one for each side and line in each of many rounds.

    `spread` is the standard deviation of a run as a share of its mean; 0 for a game of which all is drawn alike.
    `line_of` (transitions,) is the number of the line of a run, -1 for all else.
    """

    def __init__(self, net: Net, rounds: int, spread: float, chance: np.random.Generator) -> None:
        lines: dict[tuple[str | None, str], int] = {}
        found = [
            lines.setdefault((move.side, move.attempt.name), len(lines)) if spread and move.attempt.in_turn else -1
            for move in net.transitions
        ]
        self.line_of: Longs = np.array(found, dtype=np.int64)
        self._law = (1 / spread**2, spread**2) if spread else (1.0, 1.0)
        self._chance = chance
        self._left: Floats = self._drawn((len(lines), rounds))
        self._rates: Floats = np.zeros((len(lines), 0))

    def due(self, live: Longs, rows: Longs, moves: Longs, rates: Floats) -> tuple[Floats, Longs]:
        """The minutes until the first of the runs is over in each round that is `live`, and the line of that run."""
        line = self.line_of[moves]
        self._rates = np.zeros((len(self._left), len(live)))
        np.add.at(self._rates, (line[line >= 0], rows[line >= 0]), rates[line >= 0])
        wait = np.full(self._rates.shape, np.inf)
        np.divide(self._left[:, live], self._rates, out=wait, where=self._rates > 0)
        if not len(wait):
            return np.full(len(live), np.inf), np.zeros(len(live), dtype=np.int64)
        first: Longs = wait.argmin(axis=0)
        return wait[first, np.arange(len(live))], first

    def passed(self, live: Longs, minutes: Floats, over: Bools, first: Longs) -> None:
        """So much time has passed; where a run is `over` the next one begins."""
        if not len(self._left):
            return
        self._left[:, live] = np.maximum(self._left[:, live] - self._rates * minutes, 0.0)
        self._left[first[over], live[over]] = self._drawn((int(over.sum()),))

    def _drawn(self, shape: tuple[int, ...]) -> NDArray[np.float64]:
        return self._chance.gamma(*self._law, size=shape)

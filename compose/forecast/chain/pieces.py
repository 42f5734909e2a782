"""The round piece by piece: between two moments of the clock play is a chain like any other, at each it jumps.

A chain whose rates change at given times is solved exactly on each piece, from the chances with which the one
before it ended (a piecewise homogeneous Markov chain; A. Jensen's uniformization on each piece, see `chain_walk`).
"""

from __future__ import annotations

import math

import numpy as np

from compose.forecast.chain.absorb import SURE, absorb
from compose.forecast.chain.bell import watched
from compose.forecast.chain.chain import Chain, Floats, Longs, doomed_cells
from compose.forecast.chain.walk import GONE, Walk
from grammar.frozen import evolve, frozen

MOST_PIECES = 2_000  # of a round without a clock in which something comes over and over again (assumption)


@frozen(eq=False)
class Piece:
    """Play from `start` on for so many `minutes`, both from the beginning of the round."""

    start: float
    minutes: float
    walk: Walk


@frozen(eq=False)
class Pieced:
    """A round in pieces that stops at an end, or after `stop` minutes.

    `classes` are the chances of each class (`Chain`), `never` that play comes to where none can be reached. `time`
    (cells,) are minutes, `moments` (cells,) how often a moment of the clock finds play there, `at_bell` (cells,) the
    chances that it is stopped there. `error` bounds the error of a chance, `time_error` that of the mean minutes.
    """

    stop: float
    pieces: tuple[Piece, ...]
    classes: Floats
    never: float
    time: Floats
    moments: Floats
    at_bell: Floats
    error: float
    time_error: float

    @property
    def solved(self) -> bool:
        """Whether the numbers are what they claim to be."""
        return self.error <= SURE and self.time_error <= SURE * max(1.0, float(self.time.sum()))


class _Round:
    """The sums over the pieces so far."""

    def __init__(self, chain: Chain) -> None:
        assert chain.jumps is not None
        self.chain, self.jumps = chain, chain.jumps
        cells = len(chain.leaving)
        self.now, self.never, self.error, self.time_error = 0.0, 0.0, 0.0, 0.0
        self.time, self.moments, self.at_bell = np.zeros(cells), np.zeros(cells), np.zeros(cells)
        self.begin = np.zeros(cells)
        self.classes = np.zeros(chain.into.shape[1])
        self.pieces: list[Piece] = []
        if chain.start >= 0:
            self.begin[chain.start] = 1.0
        else:
            self.classes[chain.started_in] = 1.0

    def play_on(self, passed: int, until: float, slack: float) -> Floats:
        """Play until a time; gives the chances of the cells then."""
        cells = np.flatnonzero(self.jumps.passed == passed)
        part = _part(self.chain, cells)
        walk = Walk(part, self.begin[cells])
        at_end, time, error = watched(walk, until - self.now, slack)
        self.pieces.append(Piece(self.now, until - self.now, walk))
        self.error += error
        self.time_error += error * (until - self.now)
        self._spend(cells, part, time)
        here = np.zeros(len(self.begin))
        here[cells] = at_end
        self.now = until
        return here

    def play_out(self, passed: int) -> None:
        """Play until an end, however long that takes."""
        cells = np.flatnonzero(self.jumps.passed == passed)
        part, begin = _part(self.chain, cells), self.begin[cells]
        free = absorb(part, begin)
        self.pieces.append(Piece(self.now, math.inf, Walk(part, begin)))
        self.error, self.time_error = self.error + free.chance_error, self.time_error + free.time_error
        self.never += free.never
        self._spend(cells, part, free.time)

    def jump(self, here: Floats) -> None:
        """A moment of the clock."""
        self.moments += here
        self.classes += here @ self.jumps.into
        self.begin = np.asarray(here @ self.jumps.inner, dtype=np.float64)

    def _spend(self, cells: Longs, part: Chain, time: Floats) -> None:
        self.time[cells] += time
        self.classes += time @ part.into


def in_pieces(chain: Chain, stop: float, slack: float) -> Pieced:
    """The round of a chain with moments of the clock; `stop` in minutes, infinite where nothing stops it."""
    schedule, played, number = chain.space.net.schedule, _Round(chain), 0
    assert schedule is not None
    while played.begin.sum() > GONE:
        passed, tick = min(number, len(schedule.times_s)), schedule.time_s(number) / 60
        if math.isinf(min(tick, stop)):
            played.play_out(passed)
            break
        here = played.play_on(passed, min(tick, stop), slack)
        if tick >= stop:
            played.at_bell = here
            break
        played.jump(here)
        number += 1
        if number > MOST_PIECES:
            played.error += float(played.begin.sum())
            played.time_error = math.inf
            break
    return Pieced(
        stop,
        tuple(played.pieces),
        played.classes,
        played.never,
        played.time,
        played.moments,
        played.at_bell,
        played.error,
        played.time_error,
    )


def _part(chain: Chain, cells: Longs) -> Chain:
    """The chain among some cells only."""
    inner, into = chain.inner[cells][:, cells].tocsr(), chain.into[cells]
    doomed = doomed_cells(inner, into)
    there = np.isin(chain.cell, cells)
    return evolve(
        chain,
        running=chain.running[there],
        cell=np.searchsorted(cells, chain.cell[there]),
        inner=inner,
        into=into,
        leaving=chain.leaving[cells],
        doomed=doomed,
        start=-1,
        started_in=-1,
        jumps=None,
    )

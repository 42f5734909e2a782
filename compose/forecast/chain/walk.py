"""Where play is after some time, by uniformization.

The chain is watched at the ticks of a Poisson clock at least as fast as any state is left; between
ticks nothing happens, at a tick play jumps or stays (A. Jensen, "Markoff chains as an aid in the study
of Markoff processes", Skandinavisk Aktuarietidskrift 36, 1953, 87-91; from memory). All terms are
positive, so nothing cancels: the error is what the Poisson clock has left over past the last tick.
"""

from __future__ import annotations

import numpy as np

from compose.forecast.chain.chain import Chain, Floats
from compose.forecast.chain.poisson import last_above

LEFT_OVER = 1e-11  # chance of more ticks than are looked at
GONE = 1e-14  # below this chance play counts as over
NOISE = 2e-15  # changes of all chances together that rounding alone may make at a tick
IDLE = 1.02  # the clock is a little faster than any state is left, so that play to and fro settles too
IDLE_SETTLING = 1.2  # the same where play may go to and fro for ever: it settles sooner, and above rounding


class Walk:
    """The chances of the cells tick by tick, from the start, or as they are at the `begin` (cells,).

    `clock` is the rate of ticks per minute. `alive[k]` is the chance to be running still after k ticks.
    """

    def __init__(self, chain: Chain, begin: Floats | None = None) -> None:
        from scipy.sparse import diags_array  # slow to import, only needed here

        self._settles = bool(chain.doomed.any())
        idle = IDLE_SETTLING if self._settles else IDLE
        self.clock = idle * float(chain.leaving.max(initial=0.0)) or 1.0
        jump = chain.inner / self.clock
        # What stays is reckoned from the rounded chances to jump, so that chances keep their sum.
        stay = 1 - jump.sum(axis=1) - chain.into.sum(axis=1) / self.clock
        self._step = (jump.T.tocsr() + diags_array(stay, format="csr")).tocsr()
        self.chances = np.zeros(len(chain.leaving))
        if begin is not None:
            self.chances = begin.copy()
        elif chain.start >= 0:
            self.chances[chain.start] = 1.0
        self.alive = [float(self.chances.sum())]

    @property
    def ticks(self) -> int:
        """How many ticks were made."""
        return len(self.alive) - 1

    @property
    def over(self) -> bool:
        """True once play is over for certain, but for a chance too small to count."""
        return self.alive[-1] <= GONE

    @property
    def work(self) -> int:
        """How many products one tick takes."""
        return int(self._step.nnz)

    def tick(self) -> float:
        """One tick; gives the sum of all changes where play may settle without an end, else infinity."""
        after = self._step @ self.chances
        change = float(np.abs(after - self.chances).sum()) if self._settles else np.inf
        self.chances = after
        self.alive.append(float(after.sum()))
        return change


def last_tick(mean: float, left_over: float = LEFT_OVER) -> int:
    """The number of ticks that is passed with a chance of at most `left_over`."""
    return last_above(mean, left_over)

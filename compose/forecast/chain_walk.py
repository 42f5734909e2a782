"""Where play is after a time: uniformization, keeping only the states that matter.

The chain is watched at the ticks of a Poisson clock of rate L, at least as fast as any state is left;
between ticks nothing happens, at a tick play jumps with chance leaving / L (A. Jensen, "Markoff chains
as an aid in the study of Markoff processes", Skandinavisk Aktuarietidskrift 36, 1953, 87-91; from
memory). Most states carry next to no chance at any one tick: the walk keeps a neighbourhood of those
that do and counts what is lost as an error (finite state projection: B. Munsky and M. Khammash, J.
Chem. Phys. 124, 044104, 2006; from memory).
"""

from __future__ import annotations

import numpy as np

from compose.forecast.chain import Bools, Chain, Floats, Longs

SPAN = 16  # ticks between two looks at which states matter
HOPS = 6  # jumps round the states that matter which are kept as well
SMALL = 5_000  # up to so many states all are kept


class Walk:
    """The chances of the running states after so many ticks.

    `alive` lists the chance to be running still at tick 0, 1, ...; `lost` is the chance dropped so far
    (every figure is too small by at most that much); `at_rest` is True once ticks change nothing more.
    """

    def __init__(self, chain: Chain, allowance: float) -> None:
        self.chain = chain
        self.clock = float(chain.leaving.max(initial=0.0)) or 1.0
        self.alive = [1.0]
        self.lost = 0.0
        self.change = np.inf
        self._allowance = allowance
        self._backward = chain.inner.T.tocsr()
        self._backward.data /= self.clock
        self._stay = 1 - chain.leaving / self.clock
        self._whole = np.zeros(len(chain.running))
        self._whole[chain.start] = 1.0
        self._choose()

    def tick(self) -> None:
        """One tick of the clock."""
        if len(self.alive) % SPAN == 0 and len(self._whole) > SMALL:
            self._store()
            self._choose()
        after = self._jumps @ self.chances
        self.change = float(np.abs(after - self.chances).sum())
        self.lost += float(self._escape @ self.chances) if self._escape is not None else 0.0
        self.chances = after
        self.alive.append(float(after.sum()))

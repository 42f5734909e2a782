"""How play ends and how long it takes when no clock cuts it short.

One solve gives the expected visits v = e_start (I - P)^-1 of the embedded chain (fundamental matrix:
J. G. Kemeny and J. L. Snell, Finite Markov Chains, 1960, ch. III; C. M. Grinstead and J. L. Snell,
Introduction to Probability, 1997, sec. 11.2); all that depends on where time is spent follows from it.
A second one gives the mean time left from each state, and with it the variance and an error bound.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from compose.forecast.chain.chain import Chain, Floats, Longs
from compose.forecast.chain.solve import Solution, fixed_point
from grammar.frozen import frozen

if TYPE_CHECKING:
    from scipy.sparse import csr_array


ROUGH = 1e-9  # relative residual that does for the variance and the error bound
SURE = 1e-6  # error of a chance, and relative error of the mean time, up to which a solution counts as one


@frozen(eq=False)
class Absorbed:
    """The round without a clock.

    `by_end` (ends,) are chances of each end, `never` that play comes to where no end can be reached,
    `unknown` that it comes to where the space was not explored; they sum to 1. `mean` and `deviation`
    are minutes, both infinite where play may never end. `time` (cells,), `tokens` (places,
    token minutes) and `firings` (transitions,) are expectations until play stops or comes to where it
    never ends. `mean_left` (cells,) is the mean time of that kind left from each state, infinite
    where no end can be reached. `chance_error` bounds the error of every chance, `time_error` that of `mean`.
    """

    by_end: Floats
    never: float
    unknown: float
    mean: float
    deviation: float
    time: Floats
    tokens: Floats
    firings: Floats
    mean_left: Floats
    chance_error: float
    time_error: float
    method: str

    @property
    def solved(self) -> bool:
        """Whether the numbers are what they claim to be: not so where play hardly ever ends."""
        return self.chance_error <= SURE and self.time_error <= SURE * self.time.sum()


def absorb(chain: Chain, begin: Floats | None = None) -> Absorbed:
    """All of it for one chain; where play may `begin` in several cells (cells,), with these chances."""
    good = np.flatnonzero(~chain.doomed)
    visits, left = _solved(chain, good, begin)
    time = np.zeros(len(chain.leaving))
    time[good] = visits.x / chain.leaving[good]
    classes = time @ chain.into
    if chain.started_in >= 0:
        classes[chain.started_in] = 1.0
    mean_left = np.full(len(chain.leaving), math.inf)
    mean_left[good] = left.x
    never = _never(chain, time) if begin is None else float(begin[chain.doomed].sum()) + _lost(chain, time)
    mean = float(time.sum())
    square = 2 * float(time[good] @ left.x) - mean**2
    spread = math.sqrt(square) if square > 0 else 0.0
    longest = _longest(left, chain.leaving[good])
    surely = never <= 0
    return Absorbed(
        by_end=classes[:-1],
        never=never,
        unknown=float(classes[-1]),
        mean=mean if surely else math.inf,
        deviation=spread if surely else math.inf,
        time=time,
        tokens=chain.tokens(time),
        firings=chain.firings(time),
        mean_left=mean_left,
        chance_error=visits.residual,
        time_error=visits.residual * longest,
        method=visits.method,
    )


def _solved(chain: Chain, good: Longs, given: Floats | None) -> tuple[Solution, Solution]:
    """The expected visits of the good cells from the start, and the mean time left from each."""
    rate = chain.leaving[good]
    step = _scaled(chain, good, rate)
    begin = np.zeros(len(good)) if given is None else given[good]
    if given is None and chain.start >= 0 and not chain.doomed[chain.start]:
        begin[np.searchsorted(good, chain.start)] = 1.0
    return fixed_point(step.T.tocsr(), begin), fixed_point(step, 1 / rate, ROUGH)


def _longest(left: Solution, rate: Floats) -> float:
    """A bound of the mean time left from any cell.

    What is left over is made good by so much more time in each cell, so the true times are at most as many times
    longer as it is a part of the shortest stay.
    """
    if not rate.size:
        return 0.0
    short = 1 - left.residual * float(rate.max())
    return float(left.x.max()) / short if short > 0 else math.inf


def _scaled(chain: Chain, good: Longs, rate: Floats) -> csr_array:
    """The chances of one jump between the states from which play can end."""
    inner = chain.inner if len(good) == len(chain.leaving) else chain.inner[good][:, good].tocsr()
    jump = inner.copy()
    jump.data = inner.data * np.repeat(1 / rate, np.diff(inner.indptr))
    return jump


def _never(chain: Chain, time: Floats) -> float:
    """The chance to come to where no class can be reached."""
    if chain.start >= 0 and chain.doomed[chain.start]:
        return 1.0
    return _lost(chain, time)


def _lost(chain: Chain, time: Floats) -> float:
    """The chance to come from elsewhere to where no class can be reached."""
    if not chain.doomed.any():
        return 0.0
    return float((time @ chain.inner)[chain.doomed].sum())

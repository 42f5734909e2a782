"""The Poisson law: how likely so many events are, and more than so many.

Weights are built outwards from the likeliest number by the ratio of neighbours and scaled to sum to 1, so
that nothing cancels and no large factorial is needed (the way of B. L. Fox and P. W. Glynn, "Computing Poisson
probabilities", Communications of the ACM 31(4), 1988, 440-445; from memory).
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
SPREADS = 12  # standard deviations above the mean past which nothing is left in double precision


def poisson(mean: float, last: int) -> tuple[Floats, Floats]:
    """The chances of exactly k events and of more than k, for k = 0 ... last; `mean` are expected."""
    top = max(last, math.ceil(mean + SPREADS * math.sqrt(mean)) + 60)
    likeliest = int(mean)
    above = np.cumprod(mean / np.arange(likeliest + 1, top + 1)) if mean > 0 else np.zeros(top - likeliest)
    below = np.cumprod(np.arange(likeliest, 0, -1) / mean) if likeliest else np.zeros(0)
    weights = np.concatenate([below[::-1], [1.0], above])
    weights /= weights.sum()
    more = np.zeros(top + 1)
    more[:-1] = np.cumsum(weights[:0:-1])[::-1]
    return weights[: last + 1], more[: last + 1]


def last_above(mean: float, left_over: float) -> int:
    """The number of events that is passed with a chance of at most `left_over`."""
    top = math.ceil(mean + SPREADS * math.sqrt(mean)) + 60
    return int(np.argmax(poisson(mean, top)[1] <= left_over))

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
SPREADS = 39  # standard deviations from the mean past which a chance is 0 in double precision: exp(-39 ** 2 / 2)


def poisson(mean: float, last: int) -> tuple[Floats, Floats]:
    """The chances of exactly k events and of more than k, for k = 0 ... last; `mean` are expected."""
    exactly, more = np.zeros(last + 1), np.ones(last + 1)
    if last < _first(mean):
        return exactly, more
    first, weights, rest = _around(mean)
    known = min(len(weights), last + 1 - first)
    exactly[first : first + known] = weights[:known]
    more[first : first + known] = rest[:known]
    more[first + known :] = 0.0
    return exactly, more


def last_above(mean: float, left_over: float) -> int:
    """The number of events that is passed with a chance of at most `left_over`."""
    first, _, more = _around(mean)
    return first + int(np.argmax(more <= left_over))


def _first(mean: float) -> int:
    """The least number of events with any chance at all."""
    return max(0, math.floor(mean - SPREADS * math.sqrt(mean)))


def _around(mean: float) -> tuple[int, Floats, Floats]:
    """That number, and from there on the chances of exactly and of more than so many, as far as there are any.

    Only as many as the root of the mean: a round that takes years of ticks needs no memory for those years.
    """
    first, top = _first(mean), math.ceil(mean + SPREADS * math.sqrt(mean)) + 60
    likeliest = int(mean)
    above = np.cumprod(mean / np.arange(likeliest + 1, top + 1)) if mean > 0 else np.zeros(top - likeliest)
    below = np.cumprod(np.arange(likeliest, first, -1) / mean) if likeliest else np.zeros(0)
    weights = np.concatenate([below[::-1], [1.0], above])
    weights /= weights.sum()
    more = np.zeros(len(weights))
    more[:-1] = np.cumsum(weights[:0:-1])[::-1]
    return first, weights, more

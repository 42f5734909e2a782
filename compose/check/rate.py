"""How many act at once in each of many markings."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Column, Counts
from compose.net.net import Rate, Ratio

Floats = NDArray[np.float64]


def factor(rate: Rate, column: Column, states: int) -> Floats:
    """The structure factor of a rate, shape (states,): 0 where the transition is not enabled."""
    result = np.ones(states)
    if rate.limits:
        least = _total(rate.limits[0], column, states)
        for limit in rate.limits[1:]:
            least = np.minimum(least, _total(limit, column, states))
        result = least.astype(np.float64)
    for ratio in rate.ratios:
        result = result * _share(ratio, column, states)
    return result


def _total(places: tuple[int, ...], column: Column, states: int) -> Counts:
    if not places:
        return np.zeros(states, dtype=np.int32)
    total = column(places[0])
    for place in places[1:]:
        total = total + column(place)
    return total


def _share(ratio: Ratio, column: Column, states: int) -> Floats:
    above = _total(ratio.numerator, column, states).astype(np.float64)
    if isinstance(ratio.denominator, int):
        return above / ratio.denominator if ratio.denominator else np.zeros(states)
    below = _total(ratio.denominator, column, states).astype(np.float64)
    return np.divide(above, below, out=np.zeros(states), where=below > 0)

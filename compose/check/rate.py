"""How many act at once in each of many markings."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Column, Counts
from compose.net.net import Rate, Ratio

Floats = NDArray[np.float64]


def factor(rate: Rate, column: Column, states: int) -> Floats:
    """The structure factor of a rate, shape (states,): 0 where the transition is not enabled."""
    return Factors(column, states).of(rate)


class Factors:
    """The factors of the rates of one net in the same markings. Rates share most of the sums and ratios that they are
    made of; each is worked out once."""

    def __init__(self, column: Column, states: int) -> None:
        self._column = column
        self._states = states
        self._totals: dict[tuple[int, ...], Counts] = {}
        self._shares: dict[Ratio, Floats] = {}

    def of(self, rate: Rate) -> Floats:
        """The factor of one rate, shape (states,)."""
        result = np.ones(self._states)
        if rate.limits:
            least = self._total(rate.limits[0])
            for limit in rate.limits[1:]:
                least = np.minimum(least, self._total(limit))
            result = least.astype(np.float64)
        for ratio in rate.ratios:
            result = result * self._share(ratio)
        return result

    def _total(self, places: tuple[int, ...]) -> Counts:
        total = self._totals.get(places)
        if total is None:
            total = self._column(places[0]) if places else np.zeros(self._states, dtype=np.int32)
            for place in places[1:]:
                total = total + self._column(place)
            self._totals[places] = total
        return total

    def _share(self, ratio: Ratio) -> Floats:
        share = self._shares.get(ratio)
        if share is None:
            share = self._shares[ratio] = self._divided(ratio)
        return share

    def _divided(self, ratio: Ratio) -> Floats:
        above = self._total(ratio.numerator).astype(np.float64)
        if isinstance(ratio.denominator, int):
            return above / ratio.denominator if ratio.denominator else np.zeros(self._states)
        below = self._total(ratio.denominator).astype(np.float64)
        return np.divide(above, below, out=np.zeros(self._states), where=below > 0)

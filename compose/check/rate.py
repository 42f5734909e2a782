"""How many act at once in each of many markings."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Column, Counts
from compose.net.net import Rate, Ratio

Floats = NDArray[np.float64]


def factor(rate: Rate, column: Column, states: int) -> Floats:
    """The structure factor of a rate, shape (states,): 0 where the transition is not enabled."""
    only: Floats = Rates((rate,)).of(column, states)[0]
    return only


class Rates:
    """The factors of many rates in the same markings. They share most of the sums and ratios that they are made of:
    each of these has a number, and is worked out once."""

    def __init__(self, rates: Sequence[Rate]) -> None:
        self._totals: dict[tuple[int, ...], int] = {}
        self._ratios: dict[Ratio, tuple[int, int]] = {}
        numbers: dict[Ratio, int] = {}
        self._made: list[tuple[list[int], list[int], tuple[int, int] | None]] = []
        for rate in rates:
            limits = [self._total(limit) for limit in rate.limits]
            for ratio in rate.ratios:
                below = -1 if isinstance(ratio.denominator, int) else self._total(ratio.denominator)
                self._ratios.setdefault(ratio, (self._total(ratio.numerator), below))
                numbers.setdefault(ratio, len(numbers))
            turns = (rate.turns[0], self._total(rate.turns[1])) if rate.turns is not None else None
            self._made.append((limits, [numbers[ratio] for ratio in rate.ratios], turns))

    def _total(self, places: tuple[int, ...]) -> int:
        return self._totals.setdefault(places, len(self._totals))

    def of(self, column: Column, states: int) -> Floats:
        """The factor of each rate, shape (rates, states)."""
        totals = [_summed(places, column, states) for places in self._totals]
        shares = [_share(ratio, totals[above], totals[below]) for ratio, (above, below) in self._ratios.items()]
        factors = np.ones((len(self._made), states))
        for number, (limits, ratios, turns) in enumerate(self._made):
            if limits:
                factors[number] = reduce(np.minimum, [totals[limit] for limit in limits])
            if turns is not None:
                free = np.maximum(turns[0] - totals[turns[1]], 0)
                factors[number] = np.minimum(factors[number], free) if limits else free
            for ratio in ratios:
                factors[number] *= shares[ratio]
        return factors


def _summed(places: tuple[int, ...], column: Column, states: int) -> Counts:
    if not places:
        return np.zeros(states, dtype=np.int32)
    total = column(places[0])
    for place in places[1:]:
        total = total + column(place)
    return total


def _share(ratio: Ratio, above: Counts, below: Counts) -> Floats:
    """`below` is not looked at where the ratio's denominator is a number."""
    if isinstance(ratio.denominator, int):
        return above / ratio.denominator if ratio.denominator else np.zeros(len(above))
    return np.divide(above, below, out=np.zeros(len(above)), where=below > 0)

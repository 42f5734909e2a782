"""Which transitions may happen in each of many markings, and how many act at once there."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools, evaluate
from compose.check.rate import Floats, factor
from compose.net.net import Net


class Enabling:
    """Guards and rates of one net. Those that several transitions share are worked out once."""

    def __init__(self, net: Net) -> None:
        self._net = net
        self._guards = _numbered([t.guard for t in net.transitions])
        self._rates = _numbered([t.rate for t in net.transitions])

    def of(self, table: NDArray[np.int32]) -> tuple[NDArray[np.bool_], Floats]:
        """Where each transition may happen and with which factor, both (transitions, states).

        `table` holds the markings, (states, places). Factors are given where a guard fails too.
        """
        guards: dict[int, Bools] = {}
        rates: dict[int, Floats] = {}
        shape = (len(self._net.transitions), len(table))
        enabled, factors = np.zeros(shape, dtype=np.bool_), np.zeros(shape)
        for number, transition in enumerate(self._net.transitions):
            guard, rate = self._guards[number], self._rates[number]
            if guard not in guards:
                guards[guard] = evaluate(transition.guard, lambda p: table[:, p], len(table))
            if rate not in rates:
                rates[rate] = factor(transition.rate, lambda p: table[:, p], len(table))
            factors[number] = rates[rate]
            np.logical_and(guards[guard], rates[rate] > 0, out=enabled[number])
        return enabled, factors


def _numbered(values: Sequence[Hashable]) -> list[int]:
    """For each value the place where an equal one first stands."""
    first: dict[Hashable, int] = {}
    return [first.setdefault(value, number) for number, value in enumerate(values)]

"""Which transitions may happen in each of many markings, and how many act at once there."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools, evaluate
from compose.check.rate import Floats, Rates
from compose.net.alike import first_like
from compose.net.net import All, Comparison, Condition, Net, Not


class Enabling:
    """Guards and rates of one net. Guards, parts of guards and rates that several share are worked out once."""

    def __init__(self, net: Net) -> None:
        self._parts: list[tuple[Condition, tuple[int, ...]]] = []
        known: dict[Condition, int] = {}
        self._guards = [self._number(t.guard, known) for t in net.transitions]
        first = first_like([t.rate for t in net.transitions])
        self._rates = Rates([net.transitions[number].rate for number in dict.fromkeys(first)])
        places = {number: place for place, number in enumerate(dict.fromkeys(first))}
        self.rate_of = np.array([places[number] for number in first], dtype=np.int64)

    def of(self, table: NDArray[np.int32]) -> tuple[NDArray[np.bool_], Floats]:
        """Where each transition may happen, (transitions, states), and the factor of each rate, (rates, states).

        `table` holds the markings, (states, places); the rate of a transition is the one at its place in `rate_of`.
        Factors are given where a guard fails too.
        """
        guards = self._held(table)
        enabled = np.zeros((len(self._guards), len(table)), dtype=np.bool_)
        factors = self._rates.of(lambda place: table[:, place], len(table))
        above = factors > 0
        for number, (guard, rate) in enumerate(zip(self._guards, self.rate_of, strict=True)):
            np.logical_and(guards[guard], above[rate], out=enabled[number])
        return enabled, factors

    def _number(self, condition: Condition, known: dict[Condition, int]) -> int:
        """The number of a condition among the parts, each after those that it is made of."""
        number = known.get(condition)
        if number is None:
            made_of: tuple[Condition, ...] = ()
            if not isinstance(condition, Comparison):
                made_of = (condition.part,) if isinstance(condition, Not) else condition.parts
            numbers = tuple(self._number(part, known) for part in made_of)
            number = known[condition] = len(self._parts)
            self._parts.append((condition, numbers))
        return number

    def _held(self, table: NDArray[np.int32]) -> list[Bools]:
        """Where each part holds."""
        held: list[Bools] = []
        for condition, made_of in self._parts:
            if isinstance(condition, Comparison) or not made_of:
                held.append(evaluate(condition, lambda p: table[:, p], len(table)))
            elif isinstance(condition, Not):
                held.append(~held[made_of[0]])
            else:
                join = np.logical_and if isinstance(condition, All) else np.logical_or
                whole = held[made_of[0]]
                for part in made_of[1:]:
                    whole = join(whole, held[part])
                held.append(whole)
        return held

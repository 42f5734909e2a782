"""Conditions on many markings at once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from compose.net.net import All, Comparison, Condition, Not

Bools = NDArray[np.bool_]
Counts = NDArray[np.integer[Any]]
Column = Callable[[int], Counts]


def holds(condition: Condition, markings: Counts) -> Bools:
    """Where the condition holds, for markings of shape (states, places); gives shape (states,)."""
    return evaluate(condition, lambda place: markings[:, place], len(markings))


def evaluate(condition: Condition, column: Column, states: int) -> Bools:
    """The same with the counts of one place fetched only when the condition reads that place."""
    if isinstance(condition, Comparison):
        return _compare(condition, column, states)
    if isinstance(condition, Not):
        return ~evaluate(condition.part, column, states)
    if isinstance(condition, All):
        result = np.ones(states, dtype=np.bool_)
        for part in condition.parts:
            result &= evaluate(part, column, states)
        return result
    result = np.zeros(states, dtype=np.bool_)
    for part in condition.parts:
        result |= evaluate(part, column, states)
    return result


def _compare(comparison: Comparison, column: Column, states: int) -> Bools:
    total: Counts = np.zeros(states, dtype=np.int32)
    for number, (coefficient, place) in enumerate(comparison.terms):
        counts = column(place) if coefficient == 1 else coefficient * column(place)
        total = counts if number == 0 else total + counts
    if comparison.relation == "<=":
        return np.less_equal(total, comparison.bound)
    if comparison.relation == ">=":
        return np.greater_equal(total, comparison.bound)
    return np.equal(total, comparison.bound)


def places_read(condition: Condition) -> frozenset[int]:
    """The places whose counts the condition looks at."""
    if isinstance(condition, Comparison):
        return frozenset(place for _, place in condition.terms)
    if isinstance(condition, Not):
        return places_read(condition.part)
    return frozenset().union(*(places_read(part) for part in condition.parts))


def clauses(condition: Condition) -> tuple[Condition, ...]:
    """The parts that must all hold: those of an `All`, flattened, else the condition itself."""
    if not isinstance(condition, All):
        return (condition,)
    return tuple(clause for part in condition.parts for clause in clauses(part))

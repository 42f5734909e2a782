"""Breadth-first exploration of a net, a whole frontier at a time."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.effect import Act
from compose.check.encoding import LARGEST, Codes, Encoding, encoding
from compose.check.ends import first_ends
from compose.check.numbering import Numbering
from compose.check.space import USUAL, Budget, Happened, StateSpace
from compose.check.successors import Successors
from compose.net.net import Net
from grammar.frozen import frozen

# Bytes at the peak of a check, for a state, each count of a state, and an edge (measured).
PER_STATE, PER_COUNT, PER_EDGE = 60, 4, 66
CHUNK = 32_768  # states expanded at once: large enough for NumPy, small enough for the cache
LEAST_CHUNK = 1_024  # fewer at once are no quicker


@frozen
class TooLarge:
    """The net has more possible markings than a 62-bit code can number."""

    size: int


def explore(net: Net, budget: Budget = USUAL, dense_limit: int | None = None) -> StateSpace | TooLarge:
    """All reachable states, or as many as the budget allows; ends are not expanded.

    `dense_limit` sets from how many possible codes on a hash table replaces the plain table.
    """
    code = encoding(net)
    if code.size > LARGEST:
        return TooLarge(code.size)
    search = _Search(net, code, dense_limit)
    while search.expanded < search.numbering.count and not search.spent(budget):
        if not budget.keep_going("situations looked into", search.expanded, 0):
            return search.result(stopped=True)
        search.expand_next(search.room(budget))
    return search.result()


class _Search:
    """The growing space: lists of arrays, one entry per chunk, joined once at the end."""

    def __init__(self, net: Net, code: Encoding, dense_limit: int | None) -> None:
        self.net = net
        self.code = code
        self.numbering = Numbering(code.size) if dense_limit is None else Numbering(code.size, dense_limit)
        self.successors = Successors(net, code)
        start = code.codes(np.array([net.start()], dtype=np.int32))
        self.numbering.number(start)
        self.codes = np.zeros(1024, dtype=np.int64)  # doubled as needed; the first `count` are used
        self.codes[0] = start[0]
        self.parents = [np.array([-1], dtype=np.int32)]
        self.by = [np.array([-1], dtype=np.int32)]
        self.ends: list[tuple[NDArray[np.int16], NDArray[np.int16]]] = []
        self.degrees: list[NDArray[np.int64]] = []
        self.targets = [np.zeros(0, dtype=np.int32)]
        self.transitions = [np.zeros(0, dtype=np.int32)]
        self.factors = [np.zeros(0, dtype=np.float64)]
        self.chases: list[tuple[int, int]] = []
        self.expanded = 0
        self.edges = 0

    def spent(self, budget: Budget) -> bool:
        """Whether the states or the memory of the budget are used up."""
        return self.numbering.count > budget.states or self._bytes() > budget.megabytes * 1e6

    def room(self, budget: Budget) -> int:
        """How many states may be expanded at once: where each has many moves, a whole chunk is many times a budget."""
        each = self._bytes() / max(self.expanded, 1)
        return int(min(CHUNK, max(LEAST_CHUNK, (budget.megabytes * 1e6 - self._bytes()) / each)))

    def _bytes(self) -> int:
        return (PER_STATE + PER_COUNT * len(self.net.places)) * self.numbering.count + PER_EDGE * self.edges

    def expand_next(self, most: int) -> None:
        """Expand the next states in the order of discovery, so many at most."""
        first = self.expanded
        codes = self.codes[first : min(first + most, self.numbering.count)]
        table = self.code.markings(codes)
        ends = first_ends(self.net, table)
        rows = np.flatnonzero(ends[0] < 0)
        live = table if len(rows) == len(codes) else np.asfortranarray(table[rows])
        found = self.successors.of(codes[rows], live)
        before = self.numbering.count
        numbers, fresh = self.numbering.number(found.codes)
        self._keep(found.codes[fresh], before)
        degrees = np.zeros(len(codes), dtype=np.int64)
        degrees[rows] = found.degrees
        source = (rows[found.rows[fresh]] + first).astype(np.int32)
        self.ends.append(ends)
        self.degrees.append(degrees)
        self.targets.append(numbers)
        self.transitions.append(found.transitions)
        self.factors.append(found.factors)
        self.parents.append(source)
        self.by.append(found.transitions[fresh])
        self.chases += [(int(rows[row]) + first, transition) for row, transition in found.chases]
        self.expanded += len(codes)
        self.edges += len(numbers)

    def _keep(self, fresh: Codes, before: int) -> None:
        while len(self.codes) < before + len(fresh):
            self.codes = np.concatenate([self.codes, np.zeros_like(self.codes)])
        self.codes[before : before + len(fresh)] = fresh

    def result(self, stopped: bool = False) -> StateSpace:
        """Everything joined; states not expanded still get their ends."""
        codes = self.codes[: self.numbering.count].copy()
        if self.expanded < len(codes):
            self.ends.append(first_ends(self.net, self.code.markings(codes[self.expanded :])))
            self.degrees.append(np.zeros(len(codes) - self.expanded, dtype=np.int64))
        offsets = np.zeros(len(codes) + 1, dtype=np.int64)
        np.cumsum(np.concatenate(self.degrees), out=offsets[1:])
        return StateSpace(
            net=self.net,
            encoding=self.code,
            codes=codes,
            end_of=np.concatenate([first for first, _ in self.ends]),
            clash_of=np.concatenate([other for _, other in self.ends]),
            parents=np.concatenate(self.parents),
            by=np.concatenate(self.by),
            offsets=offsets,
            targets=np.concatenate(self.targets),
            transitions=np.concatenate(self.transitions),
            factors=np.concatenate(self.factors),
            expanded=self.expanded,
            happened=tuple(_frozen(act) for act in self.successors.acts),
            reacted=tuple(_frozen(act) for act in self.successors.reactions.acts),
            chases=tuple(self.chases),
            stopped=stopped,
        )


def _frozen(act: Act) -> Happened:
    return Happened(act.fired, tuple(act.changed), tuple(act.short))

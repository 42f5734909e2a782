"""The absorbing Markov chain of a net: its state space with a rate per minute on every move.

Continuous time, minutes. A move has the rate factor * constant; moves back to the same state take no
part in the chain's time (the clock of an exponential wait has no memory) but count as attempts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from attrs import frozen
from numpy.typing import ArrayLike, NDArray

from compose.check.graph import ragged
from compose.check.space import StateSpace

if TYPE_CHECKING:
    from scipy.sparse import csr_array

Floats = NDArray[np.float64]
Longs = NDArray[np.int64]
Bools = NDArray[np.bool_]


@frozen(eq=False)
class Chain:
    """Play as a chain that stops in classes: one for each end of the net, the last for "not explored".

    `rates` (edges,) are per minute. The n `running` states are those that play can reach and that do
    not stop it; `inner` (n, n) holds the rates between them without self-loops, `leaving` (n,) the
    whole rate out of each, `into` (n, classes) the rates into each class. From `doomed` ones (n,) no
    class can be reached. `start` is the place of the start among them; where the start already stops
    play there are none, `start` is -1 and `started_in` its class (else -1).
    """

    space: StateSpace
    rates: Floats
    running: Longs
    inner: csr_array
    leaving: Floats
    into: Floats
    doomed: Bools
    start: int
    started_in: int

    @property
    def classes(self) -> int:
        """How many classes there are."""
        return int(self.into.shape[1])

    def firings(self, minutes: Floats) -> Floats:
        """How often each transition happens, shape (transitions,), for so many minutes in each running state."""
        spent = np.zeros(self.space.states)
        spent[self.running] = minutes
        happened = np.repeat(spent, np.diff(self.space.offsets)) * self.rates
        return np.bincount(self.space.transitions, happened, minlength=len(self.space.net.transitions))

    def tokens(self, minutes: Floats) -> Floats:
        """Token minutes in each place, shape (places,), for so many minutes in each running state."""
        codes = self.space.codes[self.running]
        return np.asarray(minutes @ self.space.encoding.markings(codes), dtype=np.float64)


def chain(space: StateSpace, constants: ArrayLike) -> Chain:
    """The chain of a space; `constants` (transitions,) are events per minute at factor 1, not negative.

    An unfinished space gives a chain too: states not looked into stop it in the class "not explored".
    """
    rates = space.factors * np.asarray(constants, dtype=np.float64)[space.transitions]
    stops = space.end_of.astype(np.int64)
    stops[space.expanded :][stops[space.expanded :] < 0] = len(space.net.ends)
    sources = space.sources()
    moving = (rates > 0) & (sources != space.targets)
    running = np.flatnonzero(stops < 0) if (rates > 0).all() else _reached(space, moving, stops)
    position = np.full(space.states, -1, dtype=np.int64)
    position[running] = np.arange(len(running))
    edges = np.flatnonzero(moving & (position[sources] >= 0))
    return _built(space, rates, stops, position, edges)


def _built(space: StateSpace, rates: Floats, stops: Longs, position: Longs, edges: Longs) -> Chain:
    from scipy.sparse import csr_array  # noqa: PLC0415 -- slow to import, only needed here

    running = np.flatnonzero(position >= 0)
    count, classes = len(running), len(space.net.ends) + 1
    row = position[np.repeat(np.arange(space.states), np.diff(space.offsets))[edges]]
    target, rate = space.targets[edges], rates[edges]
    inside = position[target] >= 0
    shape = (count, count)
    inner = csr_array((rate[inside], (row[inside], position[target[inside]])), shape=shape)
    cell = row[~inside] * classes + stops[target[~inside]]
    into = np.bincount(cell, rate[~inside], minlength=count * classes).reshape(count, classes)
    leaving = np.bincount(row, rate, minlength=count)
    return Chain(
        space=space,
        rates=rates,
        running=running,
        inner=inner,
        leaving=leaving,
        into=into,
        doomed=_doomed(inner, into),
        start=int(position[0]),
        started_in=int(stops[0]),
    )


def _reached(space: StateSpace, moving: Bools, stops: Longs) -> Longs:
    """The states that play reaches by moves of positive rate and that do not stop it."""
    seen = np.zeros(space.states, dtype=np.bool_)
    frontier = np.flatnonzero(stops[:1] < 0)
    seen[frontier] = True
    while frontier.size:
        edges = ragged(space.offsets[frontier], space.offsets[frontier + 1])
        target = space.targets[edges[moving[edges]]]
        target = np.unique(target[(stops[target] < 0) & ~seen[target]])
        seen[target] = True
        frontier = target.astype(np.int64)
    return np.flatnonzero(seen)


def _doomed(inner: csr_array, into: Floats) -> Bools:
    """From which running states no class can be reached."""
    from scipy.sparse import csr_array  # noqa: PLC0415 -- as above
    from scipy.sparse.csgraph import breadth_first_order  # noqa: PLC0415 -- as above

    count = len(into)
    last = np.flatnonzero(into.sum(axis=1) > 0)
    back = inner.T.tocsr()
    # One more node with an edge to every state that can stop next: a search from it finds all that can stop.
    indices = np.concatenate([back.indices, last])
    offsets = np.concatenate([back.indptr, [back.indptr[-1] + len(last)]])
    graph = csr_array((np.ones(len(indices)), indices, offsets), shape=(count + 1, count + 1))
    found = breadth_first_order(graph, count, directed=True, return_predecessors=False)
    doomed = np.ones(count + 1, dtype=np.bool_)
    doomed[found] = False
    return doomed[:count]

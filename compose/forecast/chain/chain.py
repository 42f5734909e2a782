"""The absorbing Markov chain of a net: its state space with a rate per minute on every move.

Continuous time, minutes. A move has the rate factor * constant; moves back to the same state take no
part in the chain's time (the clock of an exponential wait has no memory) but count as attempts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import ArrayLike, NDArray

from compose.check.graph import ragged
from compose.check.space import StateSpace
from compose.forecast.chain.fold import mirror_images, symmetric
from grammar.frozen import frozen

if TYPE_CHECKING:
    from scipy.sparse import csr_array

Floats = NDArray[np.float64]
Longs = NDArray[np.int64]
Bools = NDArray[np.bool_]
FOLD_FROM = 2_000  # running states from which looking for a symmetry pays (measured)


@frozen(eq=False)
class Jumps:
    """Where play goes at the next moment of the clock: chances `inner` (n, n) to other cells, `into` (n, classes).

    `passed` (n,) is how many moments have passed in each cell.
    """

    inner: csr_array
    into: Floats
    passed: Longs


@frozen(eq=False)
class Chain:
    """Play as a chain that stops in classes: one for each end of the net, the last for "not explored".

    `rates` (edges,) are per minute. `running` (states,) are the numbers of the states that play can
    reach and that do not stop it. They are gathered in n cells: `cell` (running,) says which, a cell
    being one state, or one state with its mirror image where the chain is symmetric. `inner` (n, n)
    holds the rates between cells without self-loops, `leaving` (n,) the whole rate out of each, `into`
    (n, classes) the mean rate into each class. From `doomed` cells (n,) no class can be reached. `start`
    is the cell of the start; where the start already stops play there are no cells, `start` is -1 and
    `started_in` its class (else -1). `jumps` say what a moment of the clock does, None where none does anything.
    """

    space: StateSpace
    rates: Floats
    running: Longs
    cell: Longs
    inner: csr_array
    leaving: Floats
    into: Floats
    doomed: Bools
    start: int
    started_in: int
    jumps: Jumps | None = None

    def spread(self, values: Floats) -> Floats:
        """What belongs to the cells, shared out equally among their states: shape (running,)."""
        shared = values / np.maximum(1, np.bincount(self.cell, minlength=len(values)))
        return np.asarray(shared[self.cell], dtype=np.float64)

    def firings(self, minutes: Floats) -> Floats:
        """How often each transition happens, shape (transitions,), for so many minutes in each cell."""
        spent = np.zeros(self.space.states)
        spent[self.running] = self.spread(minutes)
        happened = np.repeat(spent, np.diff(self.space.offsets)) * self.rates
        kinds = len(self.space.net.transitions)
        return np.bincount(self.space.transitions, happened, minlength=kinds).astype(np.float64)

    def tokens(self, minutes: Floats) -> Floats:
        """Token minutes in each place, shape (places,), for so many minutes in each cell."""
        counts = self.space.encoding.markings(self.space.codes[self.running])
        return np.asarray(self.spread(minutes) @ counts, dtype=np.float64)


def chain(space: StateSpace, constants: ArrayLike) -> Chain:
    """The chain of a space; `constants` (transitions,) are events per minute at factor 1, not negative.

    An unfinished space gives a chain too: states not looked into stop it in the class "not explored".
    """
    rates = space.factors * np.asarray(constants, dtype=np.float64)[space.transitions]
    stops = space.end_of.astype(np.int64)
    stops[space.expanded :][stops[space.expanded :] < 0] = len(space.net.ends)
    moving = (rates > 0) & (space.sources() != space.targets)
    chances, ticking = tick_chances(space)
    running = np.flatnonzero(stops < 0) if (rates > 0).all() else _reached(space, moving | ticking, stops)
    inner, leaving, into = _matrices(space, rates, stops, running, moving)
    jumps = _jumps(space, chances, stops, running, ticking)
    mirror = mirror_images(space, running, inner, leaving) if len(running) >= FOLD_FROM else None
    if mirror is not None and jumps is not None and not symmetric(jumps.inner, jumps.into.sum(axis=1), mirror):
        mirror = None
    cell = np.arange(len(running))
    if mirror is not None:
        cell, inner, leaving, into = _folded(mirror, inner, leaving, into)
        jumps = _folded_jumps(mirror, jumps)
    return Chain(
        space=space,
        rates=rates,
        running=running,
        cell=cell,
        inner=inner,
        leaving=leaving,
        into=into,
        doomed=doomed_cells(inner, into),
        start=int(cell[0]) if stops[0] < 0 else -1,
        started_in=int(stops[0]),
        jumps=jumps,
    )


def tick_chances(space: StateSpace) -> tuple[Floats, Bools]:
    """The chance of every edge at a moment of the clock, and which edges are such, both (edges,)."""
    parts = np.array([move.part if move.ticks else 0.0 for move in space.net.transitions])
    ticks = np.array([move.ticks for move in space.net.transitions], dtype=np.bool_)
    return space.factors * parts[space.transitions], ticks[space.transitions]


def _jumps(space: StateSpace, chances: Floats, stops: Longs, running: Longs, ticking: Bools) -> Jumps | None:
    schedule = space.net.schedule
    if schedule is None:
        return None
    inner, _, into = _matrices(space, chances, stops, running, ticking)
    passed = space.encoding.markings(space.codes[running])[:, schedule.place].astype(np.int64)
    return Jumps(inner, into, passed)


def _folded_jumps(mirror: Longs, jumps: Jumps | None) -> Jumps | None:
    if jumps is None:
        return None
    cell, inner, _, into = _folded(mirror, jumps.inner, np.zeros(len(mirror)), jumps.into, within_too=True)
    first = np.flatnonzero(np.arange(len(mirror)) <= mirror)
    assert len(cell) == len(mirror)
    return Jumps(inner, into, jumps.passed[first])


def _matrices(
    space: StateSpace, rates: Floats, stops: Longs, running: Longs, moving: Bools
) -> tuple[csr_array, Floats, Floats]:
    """Rates between running states, out of them, and into the classes."""
    from scipy.sparse import csr_array  # slow to import, only needed here

    count, classes = len(running), len(space.net.ends) + 1
    position = np.full(space.states, -1, dtype=np.int64)
    position[running] = np.arange(count)
    row = np.repeat(position, np.diff(space.offsets))
    edges = np.flatnonzero(moving & (row >= 0))
    row, target, rate = row[edges], space.targets[edges], rates[edges]
    column = position[target]
    inside = column >= 0
    inner = csr_array((rate[inside], (row[inside], column[inside])), shape=(count, count))
    inner.sum_duplicates()
    cell = row[~inside] * classes + stops[target[~inside]]
    into = np.bincount(cell, rate[~inside], minlength=count * classes).astype(np.float64)
    leaving = np.bincount(row, rate, minlength=count).astype(np.float64)
    return inner, leaving, into.reshape(count, classes)


def _folded(
    mirror: Longs, inner: csr_array, leaving: Floats, into: Floats, within_too: bool = False
) -> tuple[Longs, csr_array, Floats, Floats]:
    """The same with one cell for each state and its mirror image; `within_too` keeps what stays in a cell."""
    from scipy.sparse import csr_array

    first = np.flatnonzero(np.arange(len(mirror)) <= mirror)
    cell = np.empty(len(mirror), dtype=np.int64)
    cell[first] = np.arange(len(first))
    cell[mirror[first]] = cell[first]
    rows = inner[first]
    folded = csr_array((rows.data, cell[rows.indices], rows.indptr), shape=(len(first), len(first)))
    folded.sum_duplicates()
    # An edge between the two states of one cell is a self-loop of the cell and drops out of its time.
    within = folded.diagonal()
    if within.any() and not within_too:
        folded.setdiag(0)
        folded.eliminate_zeros()
    return cell, folded, leaving[first] - within, (into[first] + into[mirror[first]]) / 2


def _reached(space: StateSpace, moving: Bools, stops: Longs) -> Longs:
    """The states that play reaches by moves of positive rate and that do not stop it."""
    seen = np.zeros(space.states, dtype=np.bool_)
    frontier = np.flatnonzero(stops[:1] < 0)
    seen[frontier] = True
    while frontier.size:
        edges = ragged(space.offsets[frontier], space.offsets[frontier + 1])
        target = space.targets[edges[moving[edges]]]
        frontier = np.unique(target[(stops[target] < 0) & ~seen[target]]).astype(np.int64)
        seen[frontier] = True
    return np.flatnonzero(seen)


def doomed_cells(inner: csr_array, into: Floats) -> Bools:
    """From which cells no class can be reached: whatever a search backwards from the classes leaves over."""
    back = inner.T.tocsr()
    offsets, before = back.indptr.astype(np.int64), back.indices
    doomed = np.asarray(into.sum(axis=1) <= 0, dtype=np.bool_)
    frontier = np.flatnonzero(~doomed)
    while frontier.size:
        reached = before[ragged(offsets[frontier], offsets[frontier + 1])]
        reached = reached[doomed[reached]]
        doomed[reached] = False
        frontier = np.unique(reached).astype(np.int64)
    return doomed

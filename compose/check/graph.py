"""Reachability on the explored graph: backward distances, bottom components, loops, longest lines.

Definitions: a bottom strongly connected component has no edge out of it; from a state play ends with
probability 1 exactly when every bottom component it can reach is an end (C. Baier and J.-P. Katoen,
Principles of Model Checking, MIT Press 2008, ch. 10, section on finite Markov chains).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.check.patience import Patience
from compose.check.space import StateSpace
from grammar.frozen import frozen

Ints = NDArray[np.int32]
Longs = NDArray[np.int64]
UNREACHABLE = -1


@frozen(eq=False)
class Backward:
    """The edges by target: those into state i are order[offsets[i]:offsets[i + 1]], with `sources`."""

    offsets: Longs
    order: Longs
    sources: Ints


def backward(space: StateSpace, sources: Ints) -> Backward:
    """The edges of the space turned round; `sources` as given by `space.sources()`."""
    order = _sorted_by(space.targets, space.states)
    offsets = np.zeros(space.states + 1, dtype=np.int64)
    np.cumsum(np.bincount(space.targets, minlength=space.states), out=offsets[1:])
    return Backward(offsets, order, sources[order])


def _sorted_by(targets: Ints, states: int) -> Longs:
    """A stable order by target, in one or two passes over 16 bits each, which NumPy sorts fastest."""
    order: Longs = np.argsort((targets & 0xFFFF).astype(np.uint16), kind="stable")
    if states > 0x10000:
        upper = (targets >> 16).astype(np.uint16)[order]
        order = order[np.argsort(upper, kind="stable")]
    return order


def distances(
    space: StateSpace,
    back: Backward,
    goals: Bools,
    allowed: Bools | None = None,
    patience: Patience | None = None,
) -> Ints:
    """How many moves from each state to the nearest goal, -1 where none can be reached.

    `allowed` (edges,) leaves some edges out. Raises StoppedError.
    """
    result = np.full(space.states, UNREACHABLE, dtype=np.int32)
    frontier = np.flatnonzero(goals)
    result[frontier] = 0
    steps = 0
    while frontier.size:
        if patience is not None:
            patience.asked("looking back from the ends")
        steps += 1
        edges = ragged(back.offsets[frontier], back.offsets[frontier + 1])
        if allowed is not None:
            edges = edges[allowed[back.order[edges]]]
        before = back.sources[edges]
        before = before[result[before] == UNREACHABLE]
        result[before] = steps
        frontier = _once(before, space.states)
    return result


def can_reach(
    space: StateSpace,
    back: Backward,
    goals: Bools,
    allowed: Bools | None = None,
    patience: Patience | None = None,
) -> Bools:
    """From which states a goal can be reached (the goals included)."""
    return np.not_equal(distances(space, back, goals, allowed, patience), UNREACHABLE)


def ragged(starts: Longs, stops: Longs) -> Longs:
    """All numbers of the ranges starts[i] to stops[i], one range after the other."""
    lengths = stops - starts
    before = np.cumsum(lengths) - lengths
    numbers: Longs = np.repeat(starts - before, lengths)
    numbers += np.arange(len(numbers), dtype=np.int64)
    return numbers


def _once(states: Ints, count: int) -> Longs:
    """Each state once, in rising order."""
    if 8 * len(states) < count:
        return np.unique(states).astype(np.int64)
    seen = np.zeros(count, dtype=np.bool_)
    seen[states] = True
    return np.flatnonzero(seen)


def bottom_components(space: StateSpace, among: Bools) -> list[Longs]:
    """The bottom components inside a set of states that no edge leaves, by their first states."""
    from scipy.sparse import csr_array  # slow to import, and sound games need none
    from scipy.sparse.csgraph import connected_components

    members = np.flatnonzero(among)
    place = np.full(space.states, -1, dtype=np.int64)
    place[members] = np.arange(len(members))
    edges = ragged(space.offsets[members], space.offsets[members + 1])
    sources, targets = place[space.sources()[edges]], place[space.targets[edges]]
    shape = (len(members), len(members))
    count, label = connected_components(
        csr_array((np.ones(len(edges), dtype=np.int8), (sources, targets)), shape=shape), connection="strong"
    )
    bottom = np.ones(count, dtype=np.bool_)
    bottom[label[sources[label[sources] != label[targets]]]] = False
    order = np.argsort(label, kind="stable")
    parts = np.split(members[order], np.cumsum(np.bincount(label, minlength=count))[:-1])
    return sorted((parts[number] for number in np.flatnonzero(bottom)), key=lambda part: int(part[0]))


def loop_from(space: StateSpace, state: int) -> list[int]:
    """The edges of a shortest way from a state back to itself; none where there is no way back."""
    via: dict[int, int] = {}
    queue = [state]
    for here in queue:
        for edge in space.edges_from(here):
            there = int(space.targets[edge])
            if there == state:
                return [*_walk(space, via, state, here), edge]
            if there not in via:
                via[there] = edge
                queue.append(there)
    return []


def _walk(space: StateSpace, via: dict[int, int], start: int, goal: int) -> list[int]:
    edges = []
    while goal != start:
        edge = via[goal]
        edges.append(edge)
        goal = int(np.searchsorted(space.offsets, edge, side="right")) - 1
    return edges[::-1]


def longest_line(space: StateSpace, patience: Patience | None = None) -> int | None:
    """The most moves that any play can take, None where play can go round for ever.

    Peels off the states that nothing leads to any more, a layer at a time. Raises StoppedError.
    """
    if np.any(space.sources() == space.targets):
        return None
    missing = np.bincount(space.targets, minlength=space.states)
    layer = np.flatnonzero(missing == 0)
    layers, peeled = 0, len(layer)
    while layer.size:
        if patience is not None:
            patience.asked("looking for the longest round")
        layers += 1
        reached = space.targets[ragged(space.offsets[layer], space.offsets[layer + 1])]
        np.subtract.at(missing, reached, 1)
        layer = _once(reached[missing[reached] == 0], space.states)
        peeled += len(layer)
    return layers - 1 if peeled == space.states else None

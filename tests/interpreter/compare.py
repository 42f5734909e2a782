"""Two readings of one game side by side: the interpreter's states and those of the net."""

from __future__ import annotations

from collections import defaultdict

import numpy as np

from compose.check import StateSpace, markings
from tests.interpreter.board import State
from tests.interpreter.rounds import DRAW


def states_of_net(space: StateSpace) -> list[State]:
    """Every state of a space by the names of its places, in its own order."""
    names = [place.name for place in space.net.places]
    table = markings(space, np.arange(space.states))
    return [frozenset((name, int(count)) for name, count in zip(names, row, strict=True) if count) for row in table]


def named(space: StateSpace) -> dict[State, str | None]:
    """Every state of a space with its result in the interpreter's words."""
    results = (None if end < 0 else space.net.ends[end].winner or DRAW for end in space.end_of)
    return dict(zip(states_of_net(space), results, strict=True))


def moves_of_net(space: StateSpace) -> dict[State, set[State]]:
    """For each state that is no end, the states one move away; a move that changes nothing leads to itself."""
    states = states_of_net(space)
    found: dict[State, set[State]] = defaultdict(set)
    for source, target in zip(space.sources(), space.targets, strict=True):
        found[states[source]].add(states[target])
    return found

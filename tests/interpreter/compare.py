"""Two readings of one game side by side: the interpreter's states and those of the net."""

from __future__ import annotations

import numpy as np

from compose.check import StateSpace, markings
from tests.interpreter.board import State
from tests.interpreter.rounds import DRAW


def named(space: StateSpace) -> dict[State, str | None]:
    """Every state of a space by the names of its places, with its result in the interpreter's words."""
    names = [place.name for place in space.net.places]
    found: dict[State, str | None] = {}
    for row, end in zip(markings(space, np.arange(space.states)), space.end_of, strict=True):
        state = frozenset((name, int(count)) for name, count in zip(names, row, strict=True) if count)
        found[state] = None if end < 0 else space.net.ends[end].winner or DRAW
    return found

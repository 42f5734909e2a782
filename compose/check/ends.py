"""Which end of the round holds in each marking, and whether another winner's end holds as well."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Counts, holds
from compose.net.net import End, Net
from compose.net.told import Cause, Ended

EndNumbers = NDArray[np.int16]


def first_ends(net: Net, markings: Counts) -> tuple[EndNumbers, EndNumbers]:
    """For each marking the first end that holds and a later end with another winner; -1 for none."""
    return first_of(net.ends, markings)


def first_of(ends: tuple[End, ...], markings: Counts) -> tuple[EndNumbers, EndNumbers]:
    """The same for any ordered list of results, such as those at the bell.

    An end that holds first without naming a winner settles the matter: no clash.
    """
    first = np.full(len(markings), -1, dtype=np.int16)
    clash = np.full(len(markings), -1, dtype=np.int16)
    for number, end in enumerate(ends):
        here = holds(end.guard, markings)
        if end.winner is not None and here.any():
            other = np.array([e.winner not in (None, end.winner) for e in ends] + [False])
            clash[here & (clash < 0) & (first >= 0) & other[first]] = number
        first[here & (first < 0)] = number
    return first, clash


def played_on(net: Net) -> bool:
    """Whether a level score is played on when the time is over, until somebody leads."""
    return any(isinstance(end.told, Ended) and end.told.because is Cause.OVER_OR_NEXT for end in net.ends)

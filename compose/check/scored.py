"""The points that sides have when a round is over."""

from __future__ import annotations

import numpy as np

from compose.check.condition import Counts
from compose.net.net import Net, Terms


def scores(net: Net) -> tuple[tuple[str, Terms], ...]:
    """The points that each side has when the round is over: those that it scored, and those of what it has then."""
    found: dict[str, Terms] = {}
    for number, place in enumerate(net.places):
        if place.token == "points" and place.side is not None:
            found[place.side] = ((1, number),)
    for each in net.at_the_end:
        found[each.side] = (*found.get(each.side, ()), *each.terms)
    return tuple((side, found.get(side, ())) for side in net.sides) if found else ()


def runs_of(net: Net) -> tuple[tuple[str, Terms], ...]:
    """How often each side has run, where that is counted."""
    found = {place.side: ((1, number),) for number, place in enumerate(net.places) if place.token == "runs"}
    return tuple((side, found.get(side, ())) for side in net.sides) if found else ()


def score(terms: Terms, counts: Counts) -> Counts:
    """The points in each of many markings (n, places)."""
    total = np.zeros(len(counts), dtype=np.int64)
    for each, place in terms:
        total += each * counts[:, place].astype(np.int64)
    return total

"""Markings as single integers: mixed-radix codes that leave out what conservation already tells.

Where tokens only move among the places of a group, their total never changes, so one place of the
group is the total minus the rest and needs no digit (a P-invariant with coefficients 1; T. Murata,
"Petri nets: properties, analysis and applications", Proceedings of the IEEE 77(4), 1989).
"""

from __future__ import annotations

import math
from collections import defaultdict

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Counts
from compose.net.net import Assign, Effect, Move, Net, Shift
from grammar.frozen import frozen

Codes = NDArray[np.int64]
LARGEST = 2**62


@frozen
class Group:
    """Places whose counts always add up to `total`; `omitted` is the one that has no digit."""

    places: tuple[int, ...]
    total: int
    omitted: int


@frozen
class Encoding:
    """code = sum over `digits` of count[place] * stride; `size` codes in all.

    `digits` holds (place, stride, radix), the last digit has stride 1.
    """

    places: int
    digits: tuple[tuple[int, int, int], ...]
    groups: tuple[Group, ...]
    size: int

    def codes(self, markings: Counts) -> Codes:
        """Codes of markings of shape (states, places)."""
        result = np.zeros(len(markings), dtype=np.int64)
        for place, stride, _ in self.digits:
            result += markings[:, place].astype(np.int64) * stride
        return result

    def markings(self, codes: Codes) -> NDArray[np.int32]:
        """Markings of shape (states, places), each place contiguous in memory."""
        result = np.zeros((len(codes), self.places), dtype=np.int32, order="F")
        small = self.size < 2**31
        rest = codes.astype(np.int32) if small else codes
        for place, stride, _ in self.digits:
            if stride == 1:
                result[:, place] = rest
            else:
                count = rest // stride
                result[:, place] = count
                rest = rest - count * stride
        for group in self.groups:
            rest_of_group = [place for place in group.places if place != group.omitted]
            column = result[:, group.omitted]
            column += group.total
            for place in rest_of_group:
                column -= result[:, place]
        return result


def encoding(net: Net) -> Encoding:
    """The code of this net; its size may be past `LARGEST`, then no code may be computed."""
    groups = conserved_groups(net)
    total_of = {place: group.total for group in groups for place in group.places}
    omitted = {group.omitted for group in groups}
    kept = [place for place in range(len(net.places)) if place not in omitted]
    radix = {
        place: min(net.places[place].capacity, total_of.get(place, net.places[place].capacity)) + 1 for place in kept
    }
    digits = []
    stride = 1
    for place in reversed(kept):
        if radix[place] > 1:
            digits.append((place, stride, radix[place]))
            stride *= radix[place]
    return Encoding(len(net.places), tuple(reversed(digits)), groups, math.prod(radix.values()))


def conserved_groups(net: Net) -> tuple[Group, ...]:
    """The groups whose total no effect changes; a place that nothing touches is a group of its own."""
    lists = [t.effects for t in net.transitions] + [r.effects for r in net.reactions]
    members = _joined(net, lists)
    changing = [effects for effects in lists if not all(isinstance(each, Move) for each in effects)]
    start = net.start()
    groups = []
    for places in members:
        total = sum(start[place] for place in places)
        if all(_conserves(effects, frozenset(places), total) for effects in changing):
            omitted = max(places, key=lambda place: net.places[place].capacity)
            groups.append(Group(places, total, omitted))
    return tuple(groups)


def _joined(net: Net, lists: list[tuple[Effect, ...]]) -> list[tuple[int, ...]]:
    """Places joined by moves, by union-find."""
    leader = list(range(len(net.places)))

    def find(place: int) -> int:
        while leader[place] != place:
            leader[place] = leader[leader[place]]
            place = leader[place]
        return place

    for effects in lists:
        for effect in effects:
            if isinstance(effect, Move):
                leader[find(effect.source)] = find(effect.target)
    members: dict[int, list[int]] = defaultdict(list)
    for place in range(len(net.places)):
        members[find(place)].append(place)
    return [tuple(places) for places in members.values()]


def _conserves(effects: tuple[Effect, ...], places: frozenset[int], total: int) -> bool:
    """Whether the list keeps the total: moves only, or a fresh value for every place of the group."""
    moves = any(isinstance(e, Move) and e.source in places for e in effects)
    assigned = [e for e in effects if isinstance(e, Assign) and e.place in places]
    if any(isinstance(e, Shift) and e.place in places for e in effects):
        return False
    if not assigned:
        return True
    whole = {e.place for e in assigned} == places and len(assigned) == len(places)
    return whole and not moves and sum(e.value for e in assigned) == total

"""Moves that do wholly what they say: their step from one code to the next is then the same in every marking."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools, evaluate, places_read
from compose.net.net import Comparison, Effect, Move, Net, Shift, Transition


class Steps:
    """The steps of one net. Counts have to be worked out only where an effect might find too little or no room, where
    it takes all there is, where a place is touched twice, and where something could follow at once."""

    def __init__(self, net: Net, strides: Mapping[int, int]) -> None:
        self._places = net.places
        self._watched = frozenset().union(*(places_read(each.guard) for each in net.reactions))
        known: dict[Comparison, int] = {}
        self._needs = [
            tuple(known.setdefault(need, len(known)) for need in self._needed(each)) if self._plain(each) else None
            for each in net.transitions
        ]
        self._known = tuple(known)
        self._steps = [sum(strides.get(place, 0) * by for place, by in _changes(each)) for each in net.transitions]

    def lacking(self, table: NDArray[np.int32]) -> list[Bools | None]:
        """Where each need is not met; None where it is everywhere."""
        held = [evaluate(need, lambda place: table[:, place], len(table)) for need in self._known]
        return [None if each.all() else ~each for each in held]

    def of(self, number: int, enabled: Bools, lacking: Sequence[Bools | None]) -> int | None:
        """What a transition adds to the code wherever it is enabled; None where that is not always the same."""
        needs = self._needs[number]
        if needs is None:
            return None
        for need in needs:
            short = lacking[need]
            if short is not None and (enabled & short).any():
                return None
        return self._steps[number]

    def _plain(self, transition: Transition) -> bool:
        touched = [place for place, _ in _changes(transition)]
        fixed = all(_is_fixed(effect) for effect in transition.effects)
        return fixed and len(set(touched)) == len(touched) and self._watched.isdisjoint(touched)

    def _needed(self, transition: Transition) -> Iterator[Comparison]:
        for place, by in _changes(transition):
            most = self._places[place].capacity
            yield _counts((place,), ">=", -by) if by < 0 else _counts((place,), "<=", most - by)
        for effect in transition.effects:
            if isinstance(effect, Move):
                yield from (_counts(room.places, "<=", room.most - (effect.amount or 0)) for room in effect.rooms)


def _is_fixed(effect: Effect) -> bool:
    """Whether an effect changes its places by a number that stands in it."""
    if isinstance(effect, Move):
        return bool(effect.amount) and effect.source != effect.target
    return isinstance(effect, Shift) and effect.by != 0


def _changes(transition: Transition) -> Iterator[tuple[int, int]]:
    for effect in transition.effects:
        if isinstance(effect, Move):
            yield effect.source, -(effect.amount or 0)
            yield effect.target, effect.amount or 0
        elif isinstance(effect, Shift):
            yield effect.place, effect.by


def _counts(places: Sequence[int], relation: str, bound: int) -> Comparison:
    return Comparison(tuple((1, place) for place in places), relation, bound)

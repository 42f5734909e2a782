"""The same value with sides exchanged: what stays equal under every exchange holds for each side alike."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from itertools import pairwise
from typing import Any

from attrs import evolve, fields_dict, has

from grammar.core.game import Play
from grammar.core.play import Offer
from grammar.core.renaming import in_any_order
from grammar.core.rules import Shift
from grammar.core.values import OnStep, SideId


def exchanged(value: Any, by: Mapping[SideId, SideId]) -> Any:
    """The value with sides in the place of others."""
    if isinstance(value, SideId):
        return by.get(value, value)
    if isinstance(value, frozenset):
        return frozenset(exchanged(part, by) for part in value)
    if isinstance(value, tuple):
        return tuple(exchanged(part, by) for part in value)
    if has(type(value)):
        return evolve(value, **{name: exchanged(getattr(value, name), by) for name in fields_dict(type(value))})
    return value


def mirrored(value: Any, one: SideId, other: SideId, play: Play) -> Any:
    """The value with two sides exchanged, steps of a track between them counted from its other end."""
    tracks = {track.id: track for track in play.tracks if set(track.homes) == {one, other}}
    found = exchanged(value, {one: other, other: one})
    return _turned(found, {name: track.steps for name, track in tracks.items()}) if tracks else found


def _turned(value: Any, steps: Mapping[Any, int]) -> Any:
    if isinstance(value, OnStep) and value.track in steps:
        return OnStep(value.track, steps[value.track] - value.step)
    if isinstance(value, Shift):
        return Shift(-value.steps)
    if isinstance(value, frozenset | tuple):
        return type(value)(_turned(part, steps) for part in value)
    if has(type(value)) and not isinstance(value, SideId):
        return evolve(value, **{name: _turned(getattr(value, name), steps) for name in fields_dict(type(value))})
    return value


def alike_for_each(values: Collection[Any], play: Play) -> bool:
    """Whether these values say the same of every side."""
    found = frozenset(_compared(value) for value in values)
    return len(play.sides) > 1 and all(
        frozenset(_compared(mirrored(value, one, other, play)) for value in values) == found
        for one, other in pairwise(play.side_ids)
    )


def _compared(value: Any) -> Any:
    """In what an offer gives to choose from, the order is that of the sides and says nothing."""
    if isinstance(value, Offer):
        return evolve(value, attempts=()), frozenset(value.attempts)
    return in_any_order(value)

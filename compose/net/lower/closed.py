"""Balls that stop where nobody follows them: part of those that come to rest in a half, or on the court.

A ball that rests "in the half" may stop anywhere in it. Of an area that nobody enters, or from which nobody
fetches, it is taken that as many balls stop there as it covers of the half; of the ground behind a line from
which nobody fetches, that half of the balls roll there (assumptions). There they lie until somebody may fetch
them.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder, Key
from compose.net.lower.spots import spot_key
from compose.net.lower.tokens import kit_meant
from compose.staging.floor.values import Rectangle
from grammar.meanings import PlaceMeaning
from grammar.sentences import play

BEYOND = 0.5  # assumption: the share of balls that roll behind a line from where nobody fetches them
LINES = ("back line", "side line", "wall", "corner")
LEAST = 1e-6  # share below which two areas only touch


def stops(builder: Builder, home: Key, kind: str, toward: str, passed: bool) -> dict[Key, float]:
    """Where balls of a kind stop that rest in a half (or on the court), with the share of each place: at hand, which
    comes first, or where nobody follows them.

    `toward` is the side at which they were sent; one that has `passed` its line or ring stops in no area before it.
    """
    shut: dict[Key, float] = {}
    for key, share in () if passed else _closed(builder, home, kind):
        shut[key] = shut.get(key, 0.0) + share
    beyond = dict.fromkeys(_beyond(builder, kind, toward))
    left = max(0.0, 1.0 - sum(shut.values()))
    shut |= {key: left * BEYOND / len(beyond) for key in beyond}
    left -= left * BEYOND if beyond else 0.0
    return {home: left, **shut} if left > LEAST else shut


def _closed(builder: Builder, home: Key, kind: str) -> Iterator[tuple[Key, float]]:
    """Areas of the sheet, with the share of the half that they cover."""
    named = {place for place, _ in _unfetched(builder, kind)}
    shut = {area.name: area for area in builder.game.areas if "enters" in area.forbidden or area.name in named}
    if not shut:
        return
    whole = _rectangle(builder, home)
    for area in builder.floor.areas:
        if area.name in shut:
            share = _overlap(area.rectangle, whole) / (whole.length * whole.width)
            if share > LEAST:
                yield (area.name, area.owner if shut[area.name].each else None), share


def _beyond(builder: Builder, kind: str, toward: str) -> Iterator[Key]:
    """Places behind, before or beside the lines of the court."""
    for place, rule in _unfetched(builder, kind):
        if place in LINES:
            yield spot_key(builder, rule.preposition, rule.where, toward, toward)


def _unfetched(builder: Builder, kind: str) -> Iterator[tuple[str, play.NobodyFetches]]:
    """The places from which the sheet says that nobody fetches balls of a kind."""
    for rule in builder.game.all_of("play", play.NobodyFetches):
        where = builder.game.meaning(rule.where.name)
        balls = kit_meant(builder, builder.game.meaning(rule.what.name), "ball")
        if isinstance(where, PlaceMeaning) and any(line.name == kind for line in balls):
            yield where.place, rule


def _rectangle(builder: Builder, home: Key) -> Rectangle:
    half = builder.floor.half_of(home[1]) if home[0] == "half" and home[1] is not None else None
    return half or builder.floor.court


def _overlap(one: Rectangle, other: Rectangle) -> float:
    """The area in square metres that two rectangles share."""
    long = min(one.right, other.right) - max(one.left, other.left)
    wide = min(one.top, other.top) - max(one.bottom, other.bottom)
    return max(0.0, long) * max(0.0, wide)

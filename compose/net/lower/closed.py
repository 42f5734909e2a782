"""Balls that stop where nobody enters: part of the half they were sent to, or of the court.

A ball that rests "in the half" may stop anywhere in it. Of an area that nobody enters it is taken that as many
balls stop there as it covers of the half (assumption), and there they lie until somebody may fetch them.
"""

from __future__ import annotations

from collections.abc import Iterator

from attrs import frozen

from compose.net.floor_values import Rectangle
from compose.net.lower.builder import Builder, Key

LEAST = 1e-6  # share below which two areas only touch


@frozen
class Stop:
    """Where a share of the balls stops; `area` is its name, None where balls lie at hand."""

    key: Key
    share: float
    area: str | None = None


def stops(builder: Builder, home: Key) -> tuple[Stop, ...]:
    """Where balls stop that rest in a half (or on the court): there, and in each area of it that nobody enters."""
    shares: dict[Key, float] = {}
    for key, share in _closed(builder, home):
        shares[key] = shares.get(key, 0.0) + share
    left = 1.0 - sum(shares.values())
    shut = tuple(Stop(key, share, str(key[0])) for key, share in shares.items())
    return (Stop(home, left), *shut) if left > LEAST else shut


def _closed(builder: Builder, home: Key) -> Iterator[tuple[Key, float]]:
    shut = {area.name: area for area in builder.game.areas if "enters" in area.forbidden}
    if not shut:
        return
    whole = _rectangle(builder, home)
    for area in builder.floor.areas:
        if area.name in shut:
            share = _overlap(area.rectangle, whole) / (whole.length * whole.width)
            if share > LEAST:
                yield (area.name, area.owner if shut[area.name].each else None), share


def _rectangle(builder: Builder, home: Key) -> Rectangle:
    half = builder.floor.half_of(home[1]) if home[0] == "half" and home[1] is not None else None
    return half or builder.floor.court


def _overlap(one: Rectangle, other: Rectangle) -> float:
    """The area in square metres that two rectangles share."""
    long = min(one.right, other.right) - max(one.left, other.left)
    wide = min(one.top, other.top) - max(one.bottom, other.bottom)
    return max(0.0, long) * max(0.0, wide)

"""Shares of a forecast that add up, and where somebody waits, in English."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING

from compose.telling.english.nouns import where
from grammar.amounts import SELDOM, percent
from grammar.core.values import At, Presence

if TYPE_CHECKING:
    from compose.net.net import Place


def for_what(place: Place) -> str:
    """Where somebody waits; who is in play waits for a turn, one after the other."""
    if isinstance(place.standing, At) and place.standing.spot.is_frozen:
        return "of frozen players"
    return "for a turn" if place.standing is Presence.PLAYING else where(place)


def parts(shares: Sequence[float], whole: int = 100, tell: Callable[[float], str] = percent) -> tuple[str, ...]:
    """The shares of a whole in percent that add up to it."""
    points = whole_percents(shares, whole)
    return tuple(tell(points[n] / 100) if n in points else tell(share) for n, share in enumerate(shares))


def whole_percents(shares: Sequence[float], whole: int = 100) -> dict[int, int]:
    """The shares, by their number, that are told in whole percents: those cut off most are rounded up (largest
    remainder).

    Equal shares stay equal, where another one can take the point.
    """
    plain = [number for number, share in enumerate(shares) if _in_whole_percents(share)]
    points = {number: math.floor(100 * shares[number] + 1e-9) for number in plain}
    if abs(100 * sum(shares) - whole) <= 1:
        for number in _raised(shares, points, whole - sum(points.values())):
            points[number] += 1
    return points


def _in_whole_percents(share: float) -> bool:
    return not (SELDOM < share < 0.005 or 0.995 < share < 1 - SELDOM)


def _raised(shares: Sequence[float], points: Mapping[int, int], missing: int) -> list[int]:
    """Which shares get a point more, so many of them as are missing."""
    groups: dict[float, list[int]] = {}
    for number in points:
        groups.setdefault(round(shares[number], 6), []).append(number)
    order = sorted(groups.values(), key=lambda group: points[group[0]] - 100 * shares[group[0]])
    raised = list[int]()
    for group in order:
        if len(group) <= missing - len(raised):
            raised += group
    left = [number for group in order for number in group if number not in raised]
    return (raised + left)[: max(0, missing)]

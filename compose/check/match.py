"""Who can win what the sheet calls a game: asked of groups of pupils, over all rounds and both halves of it.

Weak winnability (Game Description Language specification, Stanford Logic Group LG-2006-01, 2008) is a question
about the whole game. Where the sides change tasks, the one that can never win a round may win by what it does in
the other half.
"""

from __future__ import annotations

import numpy as np

from compose.check.study import Study
from compose.net.match import Match
from compose.net.net import Net
from grammar.frozen import frozen


@frozen
class Leads:
    """The least and the most by which the first side can be ahead of the second when a half is over."""

    least: int
    most: int


def lead_places(net: Net) -> tuple[int, int] | None:
    """The places of points of the first and the second of two sides, None where there are no such two."""
    points = [number for number, place in enumerate(net.places) if place.token == "points"]
    owners = tuple(net.places[place].side for place in points)
    return (points[0], points[1]) if len(points) == 2 and owners == net.sides else None


def leads(study: Study) -> Leads:
    """The leads that a half can end with: in points, or 1 for a half won where there are no points."""
    net, places = study.net, lead_places(study.net)
    over = study.ended | study.may_ring
    if places is not None:
        first, second = (study.table[over, place].astype(np.int64) for place in places)
    else:
        first, second = (study.won(side)[over].astype(np.int64) for side in net.sides)
    ahead = first - second
    return Leads(int(ahead.min()), int(ahead.max())) if ahead.size else Leads(0, 0)


def over_halves(match: Match, first: Leads, second: Leads) -> Leads:
    """The leads over both halves of the group that begins as the first side.

    Whoever wins one such game can win them all: best of several asks for no more.
    """
    if match.tasks_change:
        return Leads(first.least - second.most, first.most - second.least)
    return Leads(first.least + second.least, first.most + second.most)


def can_win(study: Study) -> tuple[str, ...]:
    """The sides for which a win of the game was found; groups in two halves go by the side that they begin as."""
    sides, match = study.net.sides, study.net.match
    if not match.halves:
        return tuple(side for side in sides if study.won(side).any())
    first = leads(study)
    both = over_halves(match, first, leads(study.turned) if study.turned is not None else first)
    return tuple(side for side, ahead in zip(sides, (both.most > 0, both.least < 0), strict=True) if ahead)


def decides(net: Net) -> bool:
    """Whether anything says who wins: an end, the bell, or points over two halves."""
    results = net.bell.results if net.bell is not None else ()
    by_points = net.match.halves and lead_places(net) is not None
    return by_points or any(end.winner is not None for end in (*net.ends, *results))

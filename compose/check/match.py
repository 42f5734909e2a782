"""Who can win what the sheet calls a game: asked of groups of pupils, over all rounds and both halves of it.

Weak winnability (Game Description Language specification, Stanford Logic Group LG-2006-01, 2008) is a question
about the whole game. Where the sides change tasks, the one that can never win a round may win by what it does in
the other half.
"""

from __future__ import annotations

import numpy as np

from compose.check.scored import score, scores
from compose.check.study import Study, once
from compose.check.taken_along import ahead_over_all, is_added, taken_along
from compose.net.match import Match
from compose.net.net import Net, Terms
from grammar.frozen import frozen


@frozen
class Leads:
    """The least and the most by which the first side can be ahead of the second when a half is over."""

    least: int
    most: int


def lead_terms(net: Net) -> tuple[Terms, Terms] | None:
    """The points of the first and the second of two sides, None where there are no such two."""
    found = scores(net)
    return (found[0][1], found[1][1]) if len(found) == 2 else None


def leads(study: Study) -> Leads:
    """The leads that a half can end with: in points, or 1 for a half won where there are no points."""
    net, terms = study.net, lead_terms(study.net)
    over = study.ended | study.may_ring
    if terms is not None:
        first, second = (score(each, study.table[over]) for each in terms)
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


@once
def can_win(study: Study) -> tuple[str, ...]:
    """The sides for which a win of the game was found; groups in two halves go by the side that they begin as."""
    sides, match = study.net.sides, study.net.match
    if not match.halves:
        return tuple(side for side in sides if study.won(side).any())
    if is_added(study.net):
        return tuple(ahead_over_all(study.net, taken_along(study.net, study.table[study.ended | study.may_ring])))
    first = leads(study)
    both = over_halves(match, first, leads(study.turned) if study.turned is not None else first)
    return tuple(side for side, ahead in zip(sides, (both.most > 0, both.least < 0), strict=True) if ahead)


def decides(net: Net) -> bool:
    """Whether anything says who wins: an end, the bell, or points over two halves."""
    results = net.bell.results if net.bell is not None else ()
    by_points = net.match.halves and bool(scores(net))
    return by_points or any(end.winner is not None for end in (*net.ends, *results))


def whole_sides_change(net: Net) -> bool:
    """Whether pupils pass from side to side within a round, so that each has the tasks of both."""
    sizes = dict.fromkeys(net.sides, 0)
    for place in net.places:
        if place.token == "player" and place.side is not None:
            sizes[place.side] += place.start
    return any(duty.players > sizes[duty.side] for duty in net.duties)

"""What each side takes along from a round into the whole game, where rounds are added: points, those of its place, or
the round won."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Counts
from compose.check.encoding import LARGEST
from compose.check.ends import first_of
from compose.check.scored import runs_of, score, scores
from compose.net.net import End, Net

Points = NDArray[np.int64]


def is_added(net: Net) -> bool:
    """Whether more than a lead of one of two sides has to be added up over the rounds."""
    return net.match.halves and (len(net.sides) > 2 or bool(net.match.places))


def taken_along(net: Net, counts: Counts) -> Points:
    """What each side takes along from rounds that stop so: (n, sides)."""
    told = scores(net)
    if not told and net.match.places:
        told = runs_of(net)  # whoever has run more often is the nearer to the end
    points = np.zeros((len(counts), len(net.sides)), dtype=np.int64)
    for number, (_, terms) in enumerate(told):
        points[:, number] = score(terms, counts)
    if told and not net.match.places:
        return points
    won = _won(net, counts)
    return _of_places(net.match.places, points, won) if net.match.places else won.astype(np.int64)


def _of_places(worth: tuple[int, ...], points: Points, won: NDArray[np.bool_]) -> Points:
    """Whoever has won is first, of the others who has more points; level sides share the better place."""
    rank = points + won * (int(points.max(initial=0)) + 1)
    before = (rank[:, None, :] > rank[:, :, None]).sum(axis=2)
    table = np.zeros(points.shape[1], dtype=np.int64)
    table[: len(worth)] = worth
    found: Points = table[before]
    return found


def _won(net: Net, counts: Counts) -> NDArray[np.bool_]:
    """Which side has won each round: (n, sides)."""
    results = net.bell.results if net.bell is not None else ()
    ended = first_of(net.ends, counts)[0]
    rung = np.where(ended < 0, first_of(results, counts)[0], -1)
    found = np.zeros((len(counts), len(net.sides)), dtype=np.bool_)
    for number, side in enumerate(net.sides):
        found[:, number] = _names(ended, net.ends, side) | _names(rung, results, side)
    return found


def _names(first: NDArray[np.int16], ends: tuple[End, ...], side: str) -> NDArray[np.bool_]:
    winning = np.array([*(end.winner == side for end in ends), False])
    found: NDArray[np.bool_] = winning[first]
    return found


def ahead_over_all(net: Net, along: Points) -> Iterator[str]:
    """The sides that can be ahead of every other over all rounds, if they stop like these.

    Of the leads that a round can end with only those count of which none is at least as good against every other.
    """
    along = _each_once(along)
    for number, side in enumerate(net.sides):
        leads = along[:, [number]] - np.delete(along, number, axis=1)
        best = _best(leads)
        over = best
        for _ in range(net.match.parts - 1):
            over = _best((over[:, None, :] + best[None, :, :]).reshape(-1, over.shape[1]))
        if (over > 0).all(axis=1).any():
            yield side


def _best(leads: Points) -> Points:
    """Those that no other is at least as good as; the one with the largest sum is always one of them."""
    left, kept = _each_once(leads), []
    while len(left):
        top = left[left.sum(axis=1).argmax()]
        kept.append(top)
        left = left[(left > top).any(axis=1)]
    return np.array(kept, dtype=np.int64).reshape(len(kept), leads.shape[1])


def _each_once(rows: Points) -> Points:
    """These rows, each once where one number can tell it from the others: a few small counts come many times."""
    low = rows.min(axis=0, initial=0)
    widths = [int(each) for each in rows.max(axis=0, initial=0) - low + 1]
    if math.prod(widths) > LARGEST:
        return rows
    codes = np.zeros(len(rows), dtype=np.int64)
    for column, width in enumerate(widths):
        codes = codes * width + (rows[:, column] - low[column])
    found: Points = rows[np.unique(codes, return_index=True)[1]]
    return found

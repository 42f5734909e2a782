"""Rounds of several sides that are all played: who has most over all of them, by what each takes along from a round."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.forecast.chain.chain import Floats
from compose.forecast.course import Course, Figure, chance_margin

MOST_CELLS = 4_000_000  # of a table of leads, about a second of work
DRAWN = 200_000  # games drawn where the table would be larger
SEED = 1


def over_all_rounds(course: Course, rounds: int) -> tuple[tuple[Figure, ...], Figure]:
    """The chances that each side alone has most over so many rounds, and that nobody does.

    Rounds are independent and alike, so that the leads over the last side after n of them have the n-fold convolution
    of the law of one (a product of transforms); where that table is too large, games are drawn.
    """
    assert course.score.along is not None
    along, chances = course.score.along
    leads = along[:, :-1] - along[:, [-1]]
    low, high = leads.min(axis=0), leads.max(axis=0)
    shape = tuple((high - low) * rounds + 1)
    if int(np.prod(shape)) > MOST_CELLS:
        return _drawn(along, chances, rounds)
    table = np.zeros(shape)
    np.add.at(table, tuple((leads - low).T), chances)
    axes = tuple(range(len(shape)))
    over = np.clip(np.fft.irfftn(np.fft.rfftn(table, axes=axes) ** rounds, s=shape, axes=axes), 0, None)
    ahead = np.indices(shape).reshape(len(shape), -1).T + low * rounds
    won = _most(np.concatenate([ahead, np.zeros((len(ahead), 1), dtype=ahead.dtype)], axis=1))
    weights = over.reshape(-1)
    wins = [float(weights[won == side].sum()) for side in range(along.shape[1])]
    return tuple(course.chance(each) for each in wins), course.chance(max(0.0, 1 - sum(wins)))


def _drawn(along: NDArray[np.int64], chances: Floats, rounds: int) -> tuple[tuple[Figure, ...], Figure]:
    draw = np.random.default_rng(SEED)
    number = draw.choice(len(chances), size=(DRAWN, rounds), p=chances / chances.sum())
    won = _most(along[number].sum(axis=1))
    shares = [float((won == side).mean()) for side in range(-1, along.shape[1])]
    figures = tuple(Figure(share, chance_margin(share, DRAWN)) for share in shares)
    return figures[1:], figures[0]


def _most(points: NDArray[np.int64]) -> NDArray[np.int64]:
    """The side that alone has most, -1 where none does."""
    best = points.max(axis=1, keepdims=True)
    alone = (points == best).sum(axis=1) == 1
    found: NDArray[np.int64] = np.where(alone, points.argmax(axis=1), -1)
    return found

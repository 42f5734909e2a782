"""The course of a round: what it comes to, be it worked out exactly or played many times."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from compose.check.scored import score, scores
from compose.check.taken_along import is_added, taken_along
from compose.forecast.chain.chain import Floats
from compose.net.net import Net
from grammar.frozen import field, frozen

SURE = 1.959963984540054  # standard deviations on either side that hold 95 % of a normal law


@frozen
class Figure:
    """A number with its margin: the true one lies within `margin` of it in 95 of 100 cases; 0 where exact."""

    value: float
    margin: float = 0.0


@frozen
class Length:
    """How long a round lasts, in minutes: the mean, the time half of them take, the time nine in ten take.

    Where a clock stops play no round is longer than the clock. `over_by` are chances that play has come
    to an end of its own after so many minutes. `settled` is False where the tail was only estimated.
    """

    mean: Figure
    median: Figure
    ninety: Figure
    over_by: tuple[tuple[float, Figure], ...] = ()
    settled: bool = True


@frozen(eq=False)
class Score:
    """The chances of 0, 1, 2 ... points when play stops, for each side; where two have points, those of every `lead` of
    the first, from as far behind as can be to as far ahead; where rounds of more sides are added, or by places, what
    they take `along` from a round, (n, sides), with its chances."""

    of_sides: tuple[tuple[str, Floats], ...] = ()
    lead: Floats | None = None
    along: tuple[NDArray[np.int64], Floats] | None = None


@frozen(eq=False)
class Course:
    """What a round comes to, in means over rounds.

    Chances that sum to 1: `by_end` (ends,) an end of play stops it, `by_result` (results of the bell,) the
    clock stops it with that result, `unsaid` the clock stops it and nothing says the result, `never` play
    comes to where it neither ends nor is stopped. `tokens` (places,) are token minutes, `firings`
    (transitions,) how often each happens, `spread_tokens` and `spread_firings` their standard errors (0 where
    exact). `points` gives for each place of points the chances of 0, 1, 2 ... when play stops, `score` those of each
    side with what else counts then.

    `spent` (states,) are the minutes in each state of the space, `moments` (states,) how often a moment of the clock
    finds play there; None where the round was played at random.

    `clock_minutes` is when the clock stops play, infinite without one; `clock_rings` is False where that
    is only the end of the lesson. `rounds` is how many rounds were played, None where nothing was: then
    `chance_error` bounds the error of every chance and `minutes_error` that of the mean length.
    """

    by_end: Floats
    by_result: Floats
    unsaid: float
    never: float
    length: Length
    tokens: Floats
    firings: Floats
    spread_tokens: Floats
    spread_firings: Floats
    points: Mapping[int, Floats]
    score: Score = Score()
    clock_minutes: float = math.inf
    clock_rings: bool = True
    rounds: int | None = None
    seed: int | None = None
    chance_error: float = 0.0
    minutes_error: float = 0.0
    method: str = field(default="")
    spent: Floats | None = None
    moments: Floats | None = None

    def chance(self, value: float) -> Figure:
        """A chance of this course with its margin."""
        return Figure(value, 0.0 if self.rounds is None else chance_margin(value, self.rounds))

    @property
    def stopped(self) -> float:
        """The chance that the clock stops play."""
        return float(self.by_result.sum()) + self.unsaid


def chance_margin(share: float, rounds: int) -> float:
    """Half the width of the 95 % interval of a share seen in so many rounds, never 0.

    The score interval keeps its level for shares near 0 and 1 (E. B. Wilson, "Probable inference, the law of
    succession, and statistical inference", Journal of the American Statistical Association 22, 1927, 209-212);
    the further of its two ends counts.
    """
    square = SURE**2
    middle = (share + square / (2 * rounds)) / (1 + square / rounds)
    half = SURE / (1 + square / rounds) * math.sqrt(share * (1 - share) / rounds + square / (4 * rounds**2))
    return max(abs(middle + half - share), abs(middle - half - share))


def score_of(net: Net, counts: NDArray[np.int32], weights: Floats) -> Score:
    """The score over markings (n, places) with weights (n,)."""
    sides, along = scores(net), _along(net, counts, weights)
    if not sides:
        return Score(along=along)
    points = [score(terms, counts) for _, terms in sides]
    most = max(sum(each * net.places[place].capacity for each, place in terms) for _, terms in sides)
    of_sides = [np.bincount(each, weights, minlength=most + 1).astype(np.float64) for each in points]
    lead = None
    if len(sides) == 2:
        lead = np.bincount(points[0] - points[1] + most, weights, minlength=2 * most + 1).astype(np.float64)
    return Score(tuple((side, chances) for (side, _), chances in zip(sides, of_sides, strict=True)), lead, along)


def _along(net: Net, counts: NDArray[np.int32], weights: Floats) -> tuple[NDArray[np.int64], Floats] | None:
    if not is_added(net):
        return None
    there = weights > 0
    along, number = np.unique(taken_along(net, counts[there]), axis=0, return_inverse=True)
    return along, np.bincount(number.reshape(-1), weights[there], minlength=len(along)).astype(np.float64)

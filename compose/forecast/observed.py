"""What a class's own rounds make of a forecast: before, and after they are weighed in.

Conjugate laws (Gelman and others, Bayesian Data Analysis, 3rd edition 2013, sections 2.4 and 2.6, from memory).
The rate at which rounds of this class are over has a Gamma law whose mean is the forecast's and which weighs as
much as `weight` rounds; with n rounds that lasted L minutes in all the mean length becomes
(weight * forecast + L) / (weight + n). Each chance has a Beta law of the same weight. A round is taken as
exponential in length, which makes the interval wider than a longer look at its law would.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.forecast.answers import Answers
from grammar.frozen import frozen

AT_THE_CLOCK_MINUTES = 1 / 60  # assumption: a stop-watch is read to the second


@frozen
class SeenRound:
    """A round that a class played: its length in minutes, and the side that won ("" for none)."""

    minutes: float
    winner: str


@frozen
class Corrected:
    """A number before and after the observed rounds, with the bounds of 90 % after them."""

    name: str
    before: float
    after: float
    low: float
    high: float


def corrected(
    usual: Answers, seen: Sequence[SeenRound], bell_minutes: float | None, weight: float
) -> tuple[Corrected, ...]:
    """Mean length in minutes, each side's odds and the chance that the clock stops play; nothing for no rounds.

    `weight` is in rounds and positive; `bell_minutes` is None where the game has no clock.
    """
    if not seen:
        return ()
    found = [_length(usual.minutes.value, [each.minutes for each in seen], weight)]
    for side, chance in usual.wins:
        won = sum(each.winner == side for each in seen)
        found.append(_chance(f"win odds of {side}", chance.value, won, len(seen), weight))
    if bell_minutes is not None:
        stopped = sum(each.minutes >= bell_minutes - AT_THE_CLOCK_MINUTES for each in seen)
        found.append(_chance("rounds that the clock stops", usual.stopped.value, stopped, len(seen), weight))
    return tuple(found)


def _length(before: float, minutes: list[float], weight: float) -> Corrected:
    from scipy.stats import gamma

    shape, exposure = weight + len(minutes), weight * before + sum(minutes)
    low, high = (exposure / float(gamma.ppf(level, shape)) for level in (0.95, 0.05))
    return Corrected("mean length", before, exposure / shape, low, high)


def _chance(name: str, before: float, times: int, of: int, weight: float) -> Corrected:
    from scipy.stats import beta

    yes, no = weight * before + times, weight * (1 - before) + of - times
    after = yes / (yes + no)
    if min(yes, no) <= 0:
        return Corrected(name, before, after, after, after)
    return Corrected(name, before, after, float(beta.ppf(0.05, yes, no)), float(beta.ppf(0.95, yes, no)))

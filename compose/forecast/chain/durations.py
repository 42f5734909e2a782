"""How long a round lasts: the chance that it is over by a time, and the times by which it mostly is."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from compose.forecast.chain.chain import Chain, Floats
from compose.forecast.chain.poisson import poisson
from compose.forecast.chain.walk import GONE, NOISE, Walk, last_tick
from grammar.frozen import frozen

MOST_PRODUCTS = 1_000_000_000  # about a second of ticks (measured); then the tail is continued as geometric
A_TICK = 5_000  # products that take as long as all else about a tick (measured)
STEADY = 1e-9  # relative change of the decay over `APART` ticks at which it counts as settled
APART = 64


@frozen(eq=False)
class Lengths:
    """Chances at the `times` asked for, and minutes at the `levels` asked for.

    `over_by[i]` is the chance that play is over after times[i] minutes. `within[j]` minutes pass with
    chance levels[j] until play is over, infinite where it is over by then with no such chance at all.
    `settled` is False where the work allowed did not reach the regular decay of the tail, so that the
    figures past it are estimates.
    """

    times: tuple[float, ...]
    over_by: Floats
    levels: tuple[float, ...]
    within: Floats
    settled: bool


def lengths(
    chain: Chain,
    times: Sequence[float] = (),
    levels: Sequence[float] = (0.5, 0.9),
    walk: Walk | None = None,
    latest: float = math.inf,
) -> Lengths:
    """How long play lasts when nothing but its ends stops it; minutes throughout. At least one level is asked for.

    `walk` may be one of the same chain that was made already, such as `Until.walk`. Nothing is looked at after
    the `latest` minute: a level that is not reached by then counts as never reached.
    """
    walk = walk if walk is not None else Walk(chain)
    tail = _Tail(walk, latest)
    if walk.alive[0] > 0:
        tail.extend(max(times, default=0.0), 1 - max(levels))
    over = np.array([1 - tail.alive(time) for time in times])
    within = np.array([tail.when(1 - level) for level in levels])
    return Lengths(tuple(times), over, tuple(levels), within, tail.settled)


def lengths_in_pieces(
    pieces: Sequence[tuple[float, float, Walk]], times: Sequence[float], levels: Sequence[float] = (0.5, 0.9)
) -> Lengths:
    """The same of a round in pieces, each with its start, its minutes and its walk."""
    tails = [(start, minutes, _Tail(walk, minutes)) for start, minutes, walk in pieces]
    latest = max(times, default=0.0)
    for start, minutes, tail in tails:
        if tail.walk.alive[0] > 0:
            until = minutes if math.isfinite(minutes) else max(0.0, latest - start)
            tail.extend(until, 1 - max(levels))
    over = np.array([1 - _alive_in(tails, time) for time in times])
    within = np.array([_when_in(tails, 1 - level) for level in levels])
    return Lengths(tuple(times), over, tuple(levels), within, all(tail.settled for _, _, tail in tails))


def _alive_in(tails: Sequence[tuple[float, float, _Tail]], time: float) -> float:
    """The chance that play still runs then; of two pieces that meet at that time the first."""
    known = [(start, tail) for start, _, tail in tails if start <= time]
    ended = all(start + minutes < time for start, minutes, _ in tails)
    return known[-1][1].alive(time - known[-1][0]) if known and not ended else 0.0


def _when_in(tails: Sequence[tuple[float, float, _Tail]], share: float) -> float:
    for start, minutes, tail in tails:
        if tail.walk.alive[0] <= share:
            return start
        if math.isinf(minutes) or tail.alive(minutes) <= share:
            return start + tail.when(share)
    return math.inf


class _Tail:
    """The chance that play still runs, as a function of time."""

    def __init__(self, walk: Walk, latest: float) -> None:
        self.walk = walk
        self.latest = latest
        self.settled = True
        self.resting = False

    def extend(self, until: float, share: float) -> None:
        """Tick until both the time and the share still running are well covered, or the latest minute is."""
        walk, most = self.walk, max(1000, MOST_PRODUCTS // (self.walk.work + A_TICK))
        needed = last_tick(walk.clock * until)
        enough = last_tick(walk.clock * self.latest) if math.isfinite(self.latest) else math.inf
        low = -1
        while not walk.over and (walk.ticks < needed or low < 0):
            if walk.ticks >= enough:
                return
            if walk.ticks >= most or self.resting:
                break
            self.resting = walk.tick() <= NOISE
            if low < 0 and walk.alive[-1] < share:
                low = walk.ticks
                needed = max(needed, last_tick(low + 6 * math.sqrt(low)))
        if walk.ticks < needed or low < 0:
            self.settled = self.resting or walk.over or self._steady()

    def _steady(self) -> bool:
        alive = self.walk.alive
        if len(alive) < APART + 2:
            return False
        now, before = alive[-1] / alive[-2], alive[-1 - APART] / alive[-2 - APART]
        return abs(now - before) <= STEADY * (1 - now)

    def alive(self, time: float) -> float:
        """The chance that play still runs after so many minutes."""
        known = self.walk.alive
        mean = self.walk.clock * time
        exactly, more = poisson(mean, len(known) - 1)
        return float(exactly @ np.array(known)) + self._beyond(mean, float(more[-1]))

    def _beyond(self, mean: float, more: float) -> float:
        """What the ticks after the last one add, the decay going on as in the last two ticks."""
        known = self.walk.alive
        if len(known) < 2 or known[-1] <= GONE or more <= 0:
            return 0.0
        ratio = 1.0 if self.resting else min(1.0, known[-1] / known[-2])  # rounding alone may raise it
        last = len(known) - 1
        # sum over k > last of Poisson(k; mean) ratio^(k - last) = e^(mean (ratio - 1)) ratio^-last P(more than last)
        grown = mean * (ratio - 1) - last * math.log(ratio)
        return known[-1] * math.exp(grown) * float(poisson(mean * ratio, last)[1][-1])

    def when(self, share: float) -> float:
        """The minutes after which the chance to run still has fallen to a share; infinite past the latest."""
        if self.walk.alive[0] <= share:
            return 0.0
        if self.resting and self.walk.alive[-1] > share:
            return math.inf
        if math.isfinite(self.latest) and self.alive(self.latest) > share:
            return math.inf
        low, high = 0.0, 1 / self.walk.clock
        while self.alive(high) > share:
            low, high = high, 2 * high
            if not math.isfinite(high):
                return math.inf
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if self.alive(middle) > share else (low, middle)
        return (low + high) / 2

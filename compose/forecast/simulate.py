"""The course of a round from many rounds played at random: for games too large to work out exactly."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator

import numpy as np
from attrs import field, frozen
from numpy.typing import ArrayLike, NDArray

from compose.check.ends import first_of
from compose.check.space import KeepGoing, always
from compose.forecast.chain import Floats, Longs
from compose.forecast.course import SURE, Course, Figure, Length, chance_margin, lead_of
from compose.forecast.rounds import CUT, STUCK, Rounds
from compose.forecast.space_rounds import SpaceRounds
from compose.forecast.waits import Waits, waits_of
from compose.net.net import Net

LONGEST_MINUTES = 24 * 60.0  # a round without a clock that lasts a day is as good as endless
FIRST = 4  # the first batch is so many times smaller


@frozen
class Play:
    """How to simulate: so many rounds in all, from this seed, in so many seconds at most.

    Rounds are played in batches; a batch that time or somebody's stop cuts short is thrown away, since
    the rounds that are over by then are the short ones.
    """

    rounds: int = 4_000
    seed: int = 1
    seconds: float = 60.0
    batch: int = 1_000
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


@frozen(eq=False)
class Simulated:
    """The course with the waits in the places watched; None where not even one batch was finished."""

    course: Course
    waits: tuple[Waits, ...]
    events: int


def simulate(
    net: Net,
    constants: ArrayLike,
    lesson_minutes: float,
    play: Play | None = None,
    watched: tuple[int, ...] = (),
    clock_minutes: float | None = None,
) -> Simulated | None:
    """Many rounds of a net; `constants` are events a minute of each transition at factor 1.

    Play stops at the bell. A game without one is played until it ends, or for `clock_minutes`, or for a day.
    """
    play = play or Play()
    without = LONGEST_MINUTES if clock_minutes is None else clock_minutes
    minutes = net.bell.after_s / 60 if net.bell is not None else without
    sizes = list(_batches(play))
    begun, done, batches = time.perf_counter(), 0, []
    for count, seed in zip(sizes, np.random.SeedSequence(play.seed).spawn(len(sizes)), strict=True):
        rounds = Rounds(net, constants, count, np.random.default_rng(seed), minutes, watched)
        if not finish(rounds, play, begun, done):
            break
        batches.append(rounds)
        done += count
    return _summed(net, batches, play, watched, lesson_minutes) if batches else None


def _batches(play: Play) -> Iterator[int]:
    """The sizes of the batches: the first is a small one, so that something is known soon."""
    size, left = max(1, play.batch // FIRST), play.rounds
    while left > 0:
        yield min(size, left)
        left -= size
        size = play.batch


def finish(rounds: Rounds | SpaceRounds, play: Play, begun: float, done: int) -> bool:
    """Play a batch to its end, after `done` rounds before it; False where it was cut short."""
    total = rounds.running
    while rounds.running:
        if time.perf_counter() - begun > play.seconds:
            return False
        if not play.keep_going("rounds played", done + total - rounds.running, play.rounds):
            return False
        rounds.step()
    return True


def _summed(net: Net, batches: list[Rounds], play: Play, watched: tuple[int, ...], lesson_minutes: float) -> Simulated:
    minutes = np.concatenate([rounds.minutes for rounds in batches])
    tokens = np.concatenate([rounds.tokens for rounds in batches])
    firings = np.concatenate([rounds.firings for rounds in batches])
    last = np.concatenate([rounds.last for rounds in batches])
    why = np.concatenate([rounds.stopped_by for rounds in batches])
    by_end, by_result, unsaid, never = _results(net, why, last)
    count = len(minutes)
    course = Course(
        by_end=by_end,
        by_result=by_result,
        unsaid=unsaid,
        never=never,
        length=_length(minutes, why, lesson_minutes),
        tokens=tokens.mean(axis=0),
        firings=firings.mean(axis=0),
        spread_tokens=tokens.std(axis=0) / math.sqrt(count),
        spread_firings=firings.std(axis=0) / math.sqrt(count),
        points={
            place: np.bincount(last[:, place], minlength=each.capacity + 1) / count
            for place, each in enumerate(net.places)
            if each.token == "points"
        },
        lead=lead_of(net, last, np.full(count, 1 / count)),
        clock_minutes=net.bell.after_s / 60 if net.bell is not None else math.inf,
        rounds=count,
        seed=play.seed,
        method="simulated",
    )
    waits = tuple(waits_of(place, [(rounds.log, len(rounds.minutes)) for rounds in batches]) for place in watched)
    return Simulated(course, waits, sum(rounds.events for rounds in batches))


def _results(net: Net, why: Longs, last: NDArray[np.int32]) -> tuple[Floats, Floats, float, float]:
    """Shares of the rounds by end, by result of the bell, stopped without a result, and never over."""
    results = net.bell.results if net.bell is not None else ()
    told = first_of(results, last[why == CUT])[0].astype(np.int64)
    by_result = np.bincount(told + 1, minlength=len(results) + 1) / len(why)
    by_end = np.bincount(why[why >= 0], minlength=len(net.ends)) / len(why)
    never = float((why == STUCK).mean())
    if net.bell is None:
        return by_end, np.zeros(0), 0.0, never + float(by_result[0])
    return by_end, by_result[1:], float(by_result[0]), never


def _length(minutes: Floats, why: Longs, lesson_minutes: float) -> Length:
    count = len(minutes)
    endless = why == STUCK
    played = np.where(endless, math.inf, minutes)
    over = float(((why >= 0) & (minutes <= lesson_minutes)).mean())
    mean = Figure(float(played.mean()), SURE * float(minutes.std()) / math.sqrt(count))
    by_lesson = (lesson_minutes, Figure(over, chance_margin(over, count)))
    return Length(mean, _quantile(played, 0.5), _quantile(played, 0.9), (by_lesson,))


def _quantile(values: Floats, level: float) -> Figure:
    """A quantile with the 95 % interval of the order statistics around it."""
    ordered, count = np.sort(values), len(values)
    ranks = count * level + SURE * math.sqrt(count * level * (1 - level)) * np.array([-1.0, 0.0, 1.0])
    low, usual, high = (float(ordered[min(max(int(rank), 0), count - 1)]) for rank in ranks)
    return Figure(usual, max(high - usual, usual - low) if math.isfinite(high) else 0.0)

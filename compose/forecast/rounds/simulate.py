"""The course of a round from many rounds played at random: for games too large to work out exactly."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray

from compose.check.ends import first_of
from compose.check.space import KeepGoing, always
from compose.forecast.chain.chain import Floats, Longs
from compose.forecast.course import SURE, Course, Figure, Length, chance_margin, score_of
from compose.forecast.rounds.on_space import SpaceRounds
from compose.forecast.rounds.rounds import CUT, Rounds
from compose.forecast.rounds.waits import Waits, waits_of
from compose.net.net import Net
from grammar.amounts import DAY_MINUTES
from grammar.frozen import field, frozen

FIRST = 4  # the first batch is so many times smaller
FEWER = 8  # a first batch in which too much happens is played again with so many times fewer rounds
LONGER = 2  # times as long as the longest of the first batch no round is followed
A_STEP = 500  # events that take as long as all else about one step of all rounds together (measured)


@frozen
class Play:
    """How to simulate: so many rounds in all, from this seed, or fewer where more than so many events would happen.

    Twenty million events are played in 20 to 40 s (measured). Rounds are played in batches; a batch that somebody's
    stop cuts short is thrown away, since the rounds that are over by then are the short ones. A small first batch
    shows how much happens in a round; `at_once` does without it where a bell ends each of them.
    """

    rounds: int = 4_000
    seed: int = 1
    events: int = 20_000_000
    batch: int = 4_000
    at_once: bool = False
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


@frozen(eq=False)
class Simulated:
    """The course with the waits in the places watched."""

    course: Course
    waits: tuple[Waits, ...]
    events: int


def simulate(
    net: Net,
    constants: ArrayLike,
    lesson_minutes: float,
    play: Play | None = None,
    watched: tuple[int, ...] = (),
    spread: float = 0.0,
) -> Simulated | None:
    """Many rounds of a net; `constants` are events a minute of each transition at factor 1, `spread` that of runs in
    turn (in_turn.py).

    Play stops at the bell. A game without one is played until it ends, or where that takes too many events, until
    the lesson ends. None where somebody stopped the first batch, or where not even one round fits into the events.
    """
    play = play or Play()
    seeds = np.random.SeedSequence(play.seed)

    def batch(count: int, minutes: float) -> Rounds:
        return Rounds(net, constants, count, np.random.default_rng(seeds.spawn(1)[0]), minutes, watched, spread=spread)

    first = _first_batch(batch, net, lesson_minutes, play)
    if first is None:
        return None
    rounds, spent, limit = first
    batches, done = [rounds], len(rounds.minutes)
    while (size := min(play.batch, play.rounds - done, int((play.events - spent) * done / max(1, spent)))) > 0:
        rounds = batch(size, limit)
        # Never given up for its events: to drop a batch would leave out the rounds that last long.
        cost = finish(rounds, play, done)
        if cost is None:
            break
        batches.append(rounds)
        spent += cost
        done += size
    return _summed(net, batches, play, watched, lesson_minutes, limit)


def _first_batch(
    batch: Callable[[int, float], Rounds], net: Net, lesson_minutes: float, play: Play
) -> tuple[Rounds, int, float] | None:
    """The first batch, its events, and the minutes after which play is stopped."""
    smaller = 1 if play.at_once and net.bell is not None else FIRST
    size = min(play.rounds, max(1, play.batch // smaller))
    if net.bell is None:
        rounds = batch(size, DAY_MINUTES)
        cost = finish(rounds, play, most=play.events // FIRST)
        if cost is None:
            return None
        if (rounds.stopped_by >= 0).all():
            return rounds, cost, max(lesson_minutes, LONGER * float(rounds.minutes.max()))
    minutes = net.bell.after_s / 60 if net.bell is not None else lesson_minutes
    while size > 0:
        rounds = batch(size, minutes)
        cost = finish(rounds, play, most=play.events)
        if cost is None or not rounds.running:
            return (rounds, cost, minutes) if cost is not None else None
        size //= FEWER
    return None


def finish(rounds: Rounds | SpaceRounds, play: Play, done: int = 0, most: float = math.inf) -> int | None:
    """Play a batch to its end, after `done` rounds before it, unless more than `most` events happen.

    Gives the events, each step of all rounds together counting as `A_STEP` more; None where somebody stopped it.
    """
    total, cost = rounds.running, 0
    while rounds.running and cost <= most:
        if not play.keep_going("rounds played", done + total - rounds.running, play.rounds):
            return None
        cost += rounds.running + A_STEP
        rounds.step()
    return cost


def _summed(
    net: Net, batches: list[Rounds], play: Play, watched: tuple[int, ...], lesson_minutes: float, limit: float
) -> Simulated:
    minutes = np.concatenate([rounds.minutes for rounds in batches])
    tokens = np.concatenate([rounds.tokens for rounds in batches])
    firings = np.concatenate([rounds.firings for rounds in batches])
    last = np.concatenate([rounds.last for rounds in batches])
    why = np.concatenate([rounds.stopped_by for rounds in batches])
    by_end, by_result, unsaid = _results(net, why, last)
    count = len(minutes)
    course = Course(
        by_end=by_end,
        by_result=by_result,
        unsaid=unsaid,
        never=0.0,
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
        score=score_of(net, last, np.full(count, 1 / count)),
        clock_minutes=limit if net.bell is not None or unsaid > 0 else math.inf,
        clock_rings=net.bell is not None,
        rounds=count,
        seed=play.seed,
        method="simulated",
    )
    waits = tuple(waits_of(place, [(rounds.log, len(rounds.minutes)) for rounds in batches]) for place in watched)
    return Simulated(course, waits, sum(rounds.events for rounds in batches))


def _results(net: Net, why: Longs, last: NDArray[np.int32]) -> tuple[Floats, Floats, float]:
    """Shares of the rounds by end, by result of the bell, and stopped without a result."""
    results = net.bell.results if net.bell is not None else ()
    told = first_of(results, last[why == CUT])[0].astype(np.int64)
    by_result = np.bincount(told + 1, minlength=len(results) + 1) / len(why)
    by_end = np.bincount(why[why >= 0], minlength=len(net.ends)) / len(why)
    return by_end, by_result[1:], float(by_result[0])


def _length(minutes: Floats, why: Longs, lesson_minutes: float) -> Length:
    count = len(minutes)
    over = float(((why >= 0) & (minutes <= lesson_minutes)).mean())
    mean = Figure(float(minutes.mean()), SURE * float(minutes.std()) / math.sqrt(count))
    by_lesson = (lesson_minutes, Figure(over, chance_margin(over, count)))
    return Length(mean, _quantile(minutes, 0.5), _quantile(minutes, 0.9), (by_lesson,))


def _quantile(values: Floats, level: float) -> Figure:
    """A quantile with the 95 % interval of the order statistics around it."""
    ordered, count = np.sort(values), len(values)
    ranks = count * level + SURE * math.sqrt(count * level * (1 - level)) * np.array([-1.0, 0.0, 1.0])
    low, usual, high = (float(ordered[min(max(int(rank), 0), count - 1)]) for rank in ranks)
    return Figure(usual, max(high - usual, usual - low))

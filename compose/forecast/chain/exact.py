"""The course of a round worked out exactly on the explored space."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from compose.check.space import StateSpace
from compose.check.taken_along import is_added
from compose.forecast.chain.absorb import Absorbed, absorb
from compose.forecast.chain.bell import Until, at_results, until
from compose.forecast.chain.chain import Chain, Floats, chain, tick_chances
from compose.forecast.chain.durations import A_TICK, Lengths, lengths, lengths_in_pieces
from compose.forecast.chain.pieces import in_pieces
from compose.forecast.course import Course, Figure, Length, Score, score_of

LEVELS = (0.5, 0.9)
SLACK = 1e-7  # error of chances of a course without quantiles
TURNS = 600  # products with the whole matrix that the odds of a game without a clock take (measured, generous)


def solving_products(space: StateSpace, constants: ArrayLike, lesson_minutes: float) -> float:
    """About how many products `exact_course` takes: every tick of the clock, or turn of the solver, is a pass over
    the edges. A processor makes 3 to 10 of them in 10 ns (measured)."""
    rates = space.factors * np.asarray(constants, dtype=np.float64)[space.transitions]
    fastest = float(np.bincount(space.sources(), rates, minlength=1).max(initial=0.0))
    minutes = space.net.bell.after_s / 60 if space.net.bell is not None else lesson_minutes
    passes = fastest * minutes if space.net.bell is not None else max(TURNS, fastest * minutes)
    return (space.edges + A_TICK) * passes


def exact_course(space: StateSpace, constants: ArrayLike, lesson_minutes: float, *, quantiles: bool = True) -> Course:
    """The course of a round of a whole space; `constants` are events a minute of each transition at factor 1.

    A game without a clock is played until it ends; where it may never end, or ends so seldom that its odds and
    length cannot be told from never, until the lesson is over.
    Without `quantiles` the median, the 90 % length and `over_by` are left out (nan, nothing).
    """
    if not space.complete:
        raise ValueError("the space is not whole; its course cannot be exact")
    built = chain(space, constants)
    if space.net.schedule is not None:
        return _with_moments(built, lesson_minutes, quantiles)
    bell = space.net.bell
    if bell is not None:
        stopped = until(built, bell.after_s / 60, bell.results, 0.0 if quantiles else SLACK)
        return _with_clock(built, stopped, lesson_minutes, True, quantiles)
    free = absorb(built)
    if free.never <= 0 and free.solved:
        return _without_clock(built, free, lesson_minutes, quantiles)
    return _with_clock(built, until(built, lesson_minutes), lesson_minutes, False, quantiles)


def _without_clock(built: Chain, free: Absorbed, lesson_minutes: float, quantiles: bool) -> Course:
    found = lengths(built, (lesson_minutes,), LEVELS) if quantiles else None
    spent = _spent(built, free.time)
    points, score = _points(built, spent, np.zeros(len(free.time)))
    return Course(
        by_end=free.by_end,
        by_result=np.zeros(0),
        unsaid=0.0,
        never=0.0,
        length=_length(free.mean, found, math.inf),
        tokens=free.tokens,
        firings=free.firings,
        spread_tokens=np.zeros_like(free.tokens),
        spread_firings=np.zeros_like(free.firings),
        points=points,
        score=score,
        chance_error=free.chance_error,
        minutes_error=free.time_error,
        method=free.method,
        spent=spent,
    )


def _with_clock(built: Chain, stopped: Until, lesson_minutes: float, rings: bool, quantiles: bool) -> Course:
    times = sorted({min(lesson_minutes, stopped.minutes), stopped.minutes})
    found = lengths(built, times, LEVELS, stopped.walk, stopped.minutes) if quantiles else None
    spent = _spent(built, stopped.time)
    points, score = _points(built, spent, stopped.at_bell)
    return Course(
        by_end=stopped.by_end,
        by_result=stopped.by_result,
        unsaid=stopped.unsaid,
        never=0.0,
        length=_length(stopped.mean, found, stopped.minutes),
        tokens=stopped.tokens,
        firings=stopped.firings,
        spread_tokens=np.zeros_like(stopped.tokens),
        spread_firings=np.zeros_like(stopped.firings),
        points=points,
        score=score,
        clock_minutes=stopped.minutes,
        clock_rings=rings,
        chance_error=stopped.error,
        minutes_error=stopped.error * stopped.minutes,
        method="uniformized",
        spent=spent,
    )


def _with_moments(built: Chain, lesson_minutes: float, quantiles: bool) -> Course:
    """Where the clock changes something while play goes on, piece by piece."""
    space, bell = built.space, built.space.net.bell
    slack = 0.0 if quantiles else SLACK
    played = in_pieces(built, bell.after_s / 60 if bell is not None else math.inf, slack)
    if bell is None and (played.never > 0 or not played.solved):
        played = in_pieces(built, lesson_minutes, slack)
    stopped = math.isfinite(played.stop)
    told = at_results(built, played.at_bell, bell.results if bell is not None else ())
    times = sorted({min(lesson_minutes, played.stop), *([played.stop] if stopped else [])})
    found = lengths_in_pieces([(p.start, p.minutes, p.walk) for p in played.pieces], times, LEVELS)
    spent, moments = _spent(built, played.time), _spent(built, played.moments)
    points, score = _points(built, spent, played.at_bell, moments)
    tokens = built.tokens(played.time)
    chances, _ = tick_chances(space)
    ticks = np.bincount(space.transitions, moments[space.sources()] * chances, minlength=len(space.net.transitions))
    firings = built.firings(played.time) + ticks
    return Course(
        by_end=played.classes[:-1],
        by_result=told[1:],
        unsaid=float(told[0]),
        never=0.0,
        length=_length(float(played.time.sum()), found if quantiles else None, played.stop),
        tokens=tokens,
        firings=firings,
        spread_tokens=np.zeros_like(tokens),
        spread_firings=np.zeros_like(firings),
        points=points,
        score=score,
        clock_minutes=played.stop,
        clock_rings=bell is not None or not stopped,
        chance_error=played.error,
        minutes_error=played.time_error,
        method="piece by piece",
        spent=spent,
        moments=moments,
    )


def _length(mean: float, found: Lengths | None, most: float) -> Length:
    if found is None:
        return Length(Figure(mean), Figure(math.nan), Figure(math.nan))
    median, ninety = (min(float(within), most) for within in found.within)
    over = tuple((time, Figure(float(chance))) for time, chance in zip(found.times, found.over_by, strict=True))
    return Length(Figure(mean), Figure(median), Figure(ninety), over, found.settled)


def _spent(built: Chain, time: Floats) -> Floats:
    """The minutes in each state of the space, (states,)."""
    spent = np.zeros(built.space.states)
    spent[built.running] = built.spread(time)
    return spent


def _points(
    built: Chain, spent: Floats, at_bell: Floats, moments: Floats | None = None
) -> tuple[dict[int, Floats], Score]:
    """The distribution of every count of points when play stops, and the score of the sides."""
    space = built.space
    places = [number for number, place in enumerate(space.net.places) if place.token == "points"]
    if not places and not space.net.at_the_end and not is_added(space.net):
        return {}, Score()
    weight = np.zeros(space.states)
    if built.started_in >= 0:
        weight[0] = 1.0
    weight[built.running] += built.spread(at_bell)
    stops = np.flatnonzero(space.ended()[space.targets])
    flow = spent[space.sources()[stops]] * built.rates[stops]
    if moments is not None:
        flow = flow + moments[space.sources()[stops]] * tick_chances(space)[0][stops]
    weight += np.bincount(space.targets[stops], flow, minlength=space.states)
    counts = space.encoding.markings(space.codes)
    by_place = {
        place: np.bincount(counts[:, place], weight, minlength=space.net.places[place].capacity + 1).astype(np.float64)
        for place in places
    }
    return by_place, score_of(space.net, counts, weight)

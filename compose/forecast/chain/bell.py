"""The round with a clock: where play is when the bell rings, and what happened until then."""

from __future__ import annotations

import numpy as np

from compose.check.ends import first_of
from compose.forecast.chain.chain import Chain, Floats
from compose.forecast.chain.poisson import poisson
from compose.forecast.chain.walk import GONE, LEFT_OVER, NOISE, Walk, last_tick
from compose.net.net import End
from grammar.frozen import frozen


@frozen(eq=False)
class Until:
    """A round that stops at an end or at the bell, whichever comes first.

    `by_end` (ends,) are the chances that an end of play came first, `by_result` (results,) that the bell
    rang and the first result that holds is that one, `unsaid` that it rang and none holds, `unknown` that
    play came first to where the space was not explored; they sum to 1. `running` is the chance that the
    bell rang; `mean` the mean length in minutes. `time` (cells,), `tokens` (places, token
    minutes) and `firings` (transitions,) are expectations until then; `at_bell` (cells,) the chance
    that the bell rings there. `walk` may be handed on to `durations.lengths`. `error` bounds the error
    of every chance.
    """

    minutes: float
    by_end: Floats
    by_result: Floats
    unsaid: float
    unknown: float
    running: float
    mean: float
    time: Floats
    tokens: Floats
    firings: Floats
    at_bell: Floats
    walk: Walk
    error: float


def until(chain: Chain, minutes: float, results: tuple[End, ...] = (), slack: float = 0.0) -> Until:
    """The round that a bell ends after so many minutes; `results` are looked at in order.

    `slack` is an error of chances that does not matter.
    """
    walk = Walk(chain)
    at_bell, time, error = watched(walk, minutes, slack)
    classes = time @ chain.into
    if chain.started_in >= 0:
        classes[chain.started_in] = 1.0
    told = at_results(chain, at_bell, results)
    return Until(
        minutes=minutes,
        by_end=classes[:-1],
        by_result=told[1:],
        unsaid=float(told[0]),
        unknown=float(classes[-1]),
        running=float(at_bell.sum()),
        mean=float(time.sum()),
        time=time,
        tokens=chain.tokens(time),
        firings=chain.firings(time),
        at_bell=at_bell,
        walk=walk,
        error=error,
    )


def at_results(chain: Chain, at_bell: Floats, results: tuple[End, ...]) -> Floats:
    """The chances at the bell that no result holds, and that each is the first that does."""
    counts = chain.space.encoding.markings(chain.space.codes[chain.running])
    first, _ = first_of(results, counts)
    return np.bincount(first + 1, chain.spread(at_bell), minlength=len(results) + 1).astype(np.float64)


def at_bell(chain: Chain) -> Until | None:
    """The round of a net with a bell, None where it has none."""
    bell = chain.space.net.bell
    return until(chain, bell.after_s / 60, bell.results) if bell is not None else None


def watched(walk: Walk, minutes: float, slack: float) -> tuple[Floats, Floats, float]:
    """The chances at the bell and the minutes spent until then, both (cells,), and the error of a chance."""
    mean = walk.clock * minutes
    left_over, gone = max(LEFT_OVER, slack), max(GONE, slack)
    last = last_tick(mean, left_over)
    now, more = poisson(mean, last)
    at_end, time = np.zeros(len(walk.chances)), np.zeros(len(walk.chances))
    error = left_over + gone
    for tick in range(last + 1):
        if now[tick] > 0:
            at_end += now[tick] * walk.chances
        time += (more[tick] / walk.clock) * walk.chances
        if walk.alive[-1] <= gone or tick == last:
            break
        change = walk.tick()
        if change <= max(NOISE, left_over / (last - tick)):
            # Later ticks change no more than this one (the step shrinks differences): take them as alike.
            error += change * (last - tick)
            at_end += now[tick + 1 :].sum() * walk.chances
            time += (more[tick + 1 :].sum() / walk.clock) * walk.chances
            break
    return at_end, time, error

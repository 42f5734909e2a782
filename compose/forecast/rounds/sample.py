"""One round played at random and written down, event by event."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from compose.check.ends import first_of
from compose.forecast.rounds.fixed_waits import FixedWaits
from compose.forecast.rounds.rounds import CUT, STUCK, Rounds
from compose.net.net import End, Net
from grammar.frozen import frozen

MOST_EVENTS = 20_000  # a round that needs more is not for reading


@frozen
class Event:
    """What happened after so many minutes of play, and the counts then."""

    minutes: float
    transition: int
    marking: tuple[int, ...]


@frozen
class Sample:
    """A round: its events, how long it took, how it ended.

    `end` is the end of play or the result at the bell, None where there is none; `rang` is True where the
    clock stopped play, `stuck` where nothing could happen any more, `unfinished` where it was broken off.
    """

    events: tuple[Event, ...]
    minutes: float
    end: End | None
    rang: bool
    stuck: bool
    unfinished: bool


def sample_round(net: Net, constants: ArrayLike, seed: int) -> Sample:
    """A round with this seed, waits of a fixed time as they are; attempts that change nothing are written down too."""
    minutes = net.bell.after_s / 60 if net.bell is not None else math.inf
    fixed = FixedWaits(net)
    watched, chance = tuple(dict.fromkeys(fixed.places)), np.random.default_rng(seed)
    rounds = Rounds(net, constants, 1, chance, minutes, watched, every_event=True, fixed=fixed)
    events: list[Event] = []
    while rounds.running and len(events) < MOST_EVENTS:
        chosen = int(rounds.step()[0])
        if chosen >= 0:
            events.append(Event(float(rounds.minutes[0]), chosen, rounds.marking()))
    why = int(rounds.stopped_by[0])
    return Sample(
        tuple(events), float(rounds.minutes[0]), _end(net, why, rounds), why == CUT, why == STUCK, bool(rounds.running)
    )


def _end(net: Net, why: int, rounds: Rounds) -> End | None:
    if why >= 0:
        return net.ends[why]
    if why != CUT or net.bell is None:
        return None
    first = int(first_of(net.bell.results, rounds.last)[0][0])
    return net.bell.results[first] if first >= 0 else None

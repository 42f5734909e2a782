"""How long pupils wait in a place, from rounds played at random."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from compose.forecast.course import SURE, Figure
from compose.forecast.rounds.wait_log import WaitLog
from grammar.frozen import frozen

TOLD = 0.02  # times are told to two digits
GROUPS = 10  # of rounds, whose differences say how sure a pooled figure is


@frozen
class Waits:
    """Waits in one place, in minutes: how many there are in a round, the mean, the wait nine in ten do not pass.

    `longest` is the time that a line gives them, infinite where none does: no wait is longer.
    `rounds` were played at random from `seed` where these are the waits of a course that was worked out.
    """

    place: int
    in_a_round: float
    mean: Figure
    ninety: Figure
    longest: float = math.inf
    rounds: int = 0
    seed: int | None = None

    @property
    def lasts_its_time(self) -> bool:
        """Whether one in ten and more last as long as the line says, as far as it is told, which none passes."""
        return self.ninety.value >= self.longest * (1 - TOLD)


def waits_of(place: int, batches: Sequence[tuple[WaitLog, int]]) -> Waits:
    """The waits in one place over batches of so many rounds; rounds in groups say how sure they are."""
    waits, groups, rounds = [], [], 0
    for log, count in batches:
        each, of = log.waits(place)
        waits.append(each)
        groups.append((of + rounds) % GROUPS)
        rounds += count
    every, group = np.concatenate(waits), np.concatenate(groups)
    longest = min((log.longest[log.places.index(place)] for log, _ in batches), default=math.inf)
    if not len(every):
        return Waits(place, 0.0, Figure(0.0), Figure(0.0), longest)
    parts = [every[group == number] for number in range(GROUPS)]
    parts = [part for part in parts if len(part)]

    def figure(value: float, of_parts: list[float]) -> Figure:
        return Figure(value, SURE * float(np.std(of_parts)) / math.sqrt(max(1, len(of_parts) - 1)))

    mean = figure(float(every.mean()), [float(part.mean()) for part in parts])
    ninety = figure(float(np.quantile(every, 0.9)), [float(np.quantile(part, 0.9)) for part in parts])
    return Waits(place, len(every) / rounds, mean, ninety, longest)

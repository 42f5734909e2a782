"""How long pupils wait in a place, from rounds played at random."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from compose.forecast.course import SURE, Figure
from compose.forecast.rounds.wait_log import WaitLog
from grammar.frozen import frozen

GROUPS = 10  # of rounds, whose differences say how sure a pooled figure is


@frozen
class Waits:
    """Waits in one place, in minutes: how many there are in a round, the mean, the wait nine in ten do not pass.

    `rounds` were played at random from `seed` where these are the waits of a course that was worked out.
    """

    place: int
    in_a_round: float
    mean: Figure
    ninety: Figure
    rounds: int = 0
    seed: int | None = None


def waits_of(place: int, batches: Sequence[tuple[WaitLog, int]]) -> Waits:
    """The waits in one place over batches of so many rounds; rounds in groups say how sure they are."""
    waits, groups, rounds = [], [], 0
    for log, count in batches:
        each, of = log.waits(place)
        waits.append(each)
        groups.append((of + rounds) % GROUPS)
        rounds += count
    every, group = np.concatenate(waits), np.concatenate(groups)
    if not len(every):
        return Waits(place, 0.0, Figure(0.0), Figure(0.0))
    parts = [every[group == number] for number in range(GROUPS)]
    parts = [part for part in parts if len(part)]

    def figure(value: float, of_parts: list[float]) -> Figure:
        return Figure(value, SURE * float(np.std(of_parts)) / math.sqrt(max(1, len(of_parts) - 1)))

    mean = figure(float(every.mean()), [float(part.mean()) for part in parts])
    ninety = figure(float(np.quantile(every, 0.9)), [float(np.quantile(part, 0.9)) for part in parts])
    return Waits(place, len(every) / rounds, mean, ninety)

"""Which assumption moves the forecast most: every norm is put to either end of its band, one at a time."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from compose.forecast.answers import Answers
from compose.forecast.assumptions import Assumption
from compose.forecast.chain.chain import Floats
from compose.forecast.chances.chances import chances
from compose.forecast.course import Course
from compose.net.net import Net
from compose.staging.norms import Level
from grammar.frozen import frozen
from library import KitItem, Norms

Solve = Callable[[Mapping[str, Level]], Answers | None]
ENDS: tuple[Level, Level] = ("low", "high")


@frozen
class Swing:
    """What one norm does to the forecast between the two ends of its band.

    `low` and `high` are the answers with the norm at its lower and its upper number, all else usual.
    `most` names the answer that it moves most and `by` how far: a part of the usual value for lengths and
    turns, a difference of shares for odds and times. `beyond_chance` is False where that is within the
    margin of a simulation.
    """

    table: str
    about: str
    assumptions: tuple[Assumption, ...]
    low: Answers
    high: Answers
    most: str
    by: float
    beyond_chance: bool = True


def swings(
    net: Net,
    norms: Norms,
    kit: Mapping[str, KitItem],
    known: Sequence[Assumption],
    usual: Course,
    told: Answers,
    solve: Solve,
    wanted: Callable[[int], bool],
) -> tuple[Swing, ...]:
    """The swings of all norms that have a band, the largest first.

    `told` are the usual answers, `solve` gives those with single norms at an end of their band. Norms that
    change the numbers of events most are looked at first; `wanted` is asked with the number of swings found
    before each one, so that a search may stop early.
    """
    tables = dict.fromkeys(each.table for each in known if each.low < each.high)
    base = chances(net, norms, kit)
    moved = {table: [chances(net, norms, kit, instead={table: end}) for end in ENDS] for table in tables}
    order = sorted(tables, key=lambda table: -_stirred(net, base, moved[table], usual.firings))
    found: list[Swing] = []
    for table in order:
        if not wanted(len(found)):
            break
        low, high = (solve({table: end}) for end in ENDS)
        if low is None or high is None:
            break
        of_table = tuple(each for each in known if each.table == table)
        found.append(_swing(table, of_table, told, low, high))
    return tuple(sorted(found, key=lambda swing: -swing.by))


def _stirred(net: Net, base: Floats, moved: list[Floats], firings: Floats) -> float:
    """By which part the events of a usual round would come oftener or less often, each outcome by itself.

    Hits are few beside misses, yet a change of their number is what moves a game.
    """
    change = np.abs(moved[0] - base) + np.abs(moved[1] - base)
    parts = firings * np.divide(change, base, out=np.zeros_like(base), where=base > 0)
    outcomes = np.unique([move.outcome for move in net.transitions], return_inverse=True)[1]
    events, stirred = np.bincount(outcomes, firings), np.bincount(outcomes, parts)
    return float(np.divide(stirred, events, out=np.zeros_like(events), where=events > 0).sum())


def _swing(table: str, of_table: tuple[Assumption, ...], usual: Answers, low: Answers, high: Answers) -> Swing:
    sizes: dict[str, tuple[float, float]] = {}
    for name, (figure, share) in usual.named().items():
        one, other = low.named()[name][0], high.named()[name][0]
        ends = (one.value, figure.value, other.value)
        scale = 1.0 if share else figure.value
        if scale > 0 and np.isfinite(ends).all():
            noise = max(one.margin, other.margin, figure.margin)
            sizes[name] = (max(ends) - min(ends)) / scale, noise / scale
    most = max(sizes, key=lambda name: sizes[name][0], default="")
    by, noise = sizes.get(most, (0.0, 0.0))
    return Swing(table, of_table[0].about, of_table, low, high, most, by, by > noise)

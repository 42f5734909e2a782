"""How fast the exact forecast is as one game grows. Prints a table, judges nothing.

Run with `python -m tests.benchmarks.forecast_growth [most states]` (default 600,000). Columns: building
the chain; odds, mean and deviation; a bell after 6 min; median and 90 % (after the bell's ticks);
residual of the odds.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from typing import TypeVar

from compose.check import Budget, StateSpace, explore
from compose.forecast.chain.absorb import absorb
from compose.forecast.chain.bell import at_bell
from compose.forecast.chain.chain import chain
from compose.forecast.chain.durations import lengths
from tests.benchmarks.lantern_net import lantern_row

SIZES = ((2, 1, 2), (5, 3, 4), (8, 4, 6), (14, 6, 8), (18, 10, 12), (24, 12, 16))
PER_MINUTE = 6 * 0.5  # throws of one player a minute, half of them at either aim (invented)
CHANCES = {"success": 0.1, "caught": 0.15, "missed": 0.75}  # invented
Result = TypeVar("Result")


def main(most: int) -> None:
    """One line for each size that stays under the given number of states."""
    print(f"{'states':>10} {'cells':>8} {'chain s':>8} {'odds s':>8} {'bell s':>8} {'times s':>8} {'ticks':>6}", end="")
    print(f" {'residual':>9} {'mean min':>9}  method")
    for players, lanterns, balls in SIZES:
        net = lantern_row(players, lanterns, balls, bell_s=360.0)
        space = explore(net, Budget(states=most, megabytes=20_000.0))
        assert isinstance(space, StateSpace)
        if not space.complete:
            break
        constants = [PER_MINUTE * CHANCES[move.outcome] for move in net.transitions]
        built, chain_s = _timed(lambda: chain(space, constants))  # noqa: B023 -- called at once
        free, odds_s = _timed(lambda: absorb(built))  # noqa: B023 -- called at once
        bell, bell_s = _timed(lambda: at_bell(built))  # noqa: B023 -- called at once
        assert bell is not None
        ticks = bell.walk.ticks
        _, times_s = _timed(lambda: lengths(built, walk=bell.walk))  # noqa: B023 -- called at once
        print(f"{space.states:>10,} {len(built.leaving):>8,} {chain_s:>8.3f} {odds_s:>8.3f}", end="")
        print(f" {bell_s:>8.3f} {times_s:>8.3f} {ticks:>6}", end="")
        print(f" {free.chance_error:>9.1e} {free.mean:>9.3f}  {free.method}")


def _timed(work: Callable[[], Result]) -> tuple[Result, float]:
    begun = time.perf_counter()
    result = work()
    return result, time.perf_counter() - begun


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 600_000)

"""How fast and how large: exploring and checking one game as it grows. Prints a table, judges nothing.

Run with `python -m tests.benchmarks.explore_growth [most states]` (default 1,000,000; 11,000,000 takes some
minutes and gigabytes). The last column is the most memory that the process has had so far.
"""

from __future__ import annotations

import resource
import sys
import time

from compose.check import Budget, StateSpace, check, explore
from compose.net.net import Net
from tests.benchmarks.lantern_net import lantern_row

SIZES = ((2, 1, 2), (5, 3, 4), (8, 4, 6), (14, 6, 8), (18, 10, 12), (24, 12, 16), (30, 20, 24))
ROUNDS = 3
LONG_SECONDS = 5.0  # what takes longer is done once


def main(most: int) -> None:
    """One line for each size that stays under the given number of states."""
    print(
        f"{'players':>7} {'lanterns':>8} {'balls':>5} {'states':>10} {'edges':>11} {'s':>8} {'states/s':>10}",
        end="",
    )
    print(f" {'B/state':>8} {'check s':>8} {'peak MB':>8}")
    for players, lanterns, balls in SIZES:
        net = lantern_row(players, lanterns, balls)
        budget = Budget(states=most, megabytes=20_000.0)
        space, best = _explored(net, budget)
        begun = time.perf_counter()
        check(net, budget)
        checked = time.perf_counter() - begun
        print(
            f"{players:>7} {lanterns:>8} {balls:>5} {space.states:>10,} {space.edges:>11,} {best:>8.3f}",
            end="",
        )
        print(f" {space.states / best:>10,.0f} {_bytes(space) / space.states:>8.0f} {checked:>8.3f}", end="")
        print(f" {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:>8,.0f}", end="")
        print("" if space.complete else f"  stopped, {space.unexpanded:,} not looked into")


def _explored(net: Net, budget: Budget) -> tuple[StateSpace, float]:
    """The space and the best of a few times; what takes long is done once."""
    times: list[float] = []
    while len(times) < ROUNDS and (not times or times[-1] < LONG_SECONDS):
        begun = time.perf_counter()
        space = explore(net, budget)
        times.append(time.perf_counter() - begun)
        assert isinstance(space, StateSpace)
    return space, min(times)


def _bytes(space: StateSpace) -> int:
    arrays = (
        space.codes,
        space.end_of,
        space.clash_of,
        space.parents,
        space.by,
        space.offsets,
        space.targets,
        space.transitions,
        space.factors,
    )
    return sum(array.nbytes for array in arrays)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000)

"""How long a command takes from nothing: a fresh Python for each run. Prints a table, judges nothing.

Run with `python -m tests.benchmarks.cold_start [rounds]`. Wall seconds are the best of a few runs; seconds of
the processor beside them hardly depend on what else the machine is doing.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import time

COMMANDS = (
    ("check", "lantern-row"),
    ("check", "heron-and-pike"),
    ("forecast", "lantern-row"),
    ("forecast", "heron-and-pike"),
    ("replay", "lantern-row"),
    ("export", "lantern-row"),
)


def main(rounds: int) -> None:
    """One line for each command."""
    print(f"{'command':<28} {'wall s':>8} {'processor s':>12}")
    for words in COMMANDS:
        runs = [_run(words) for _ in range(rounds)]
        print(f"{' '.join(words):<28} {min(wall for wall, _ in runs):>8.2f} {min(cpu for _, cpu in runs):>12.2f}")


def _run(words: tuple[str, ...]) -> tuple[float, float]:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    begun = time.perf_counter()
    subprocess.run([sys.executable, "-m", "compose.terminal.main", *words], stdout=subprocess.DEVNULL, check=False)
    wall = time.perf_counter() - begun
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)

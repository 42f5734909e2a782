"""Kill a writer of a shelf again and again (300 times unless told otherwise) and print what was seen.

    python tests/benchmarks/share_kill.py [kills] [seed]

A kill ends the program between two instructions. It says nothing of a power cut, against which each file
is flushed to the disk before it is acknowledged.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "share")]

from killed_writer import run  # noqa: E402  (the path is set above)


def main() -> None:
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    started = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder:
        counts = run(Path(folder), kills, seed)
    print(f"{counts.kills} kills in {time.perf_counter() - started:.0f} s")
    print(f"{counts.acknowledged} pieces of work acknowledged, all of them there: {counts.acknowledged_of}")
    print(f"work that was cut off: {counts.in_flight_there} whole, {counts.in_flight_not_there} not begun, 0 by half")


if __name__ == "__main__":
    main()

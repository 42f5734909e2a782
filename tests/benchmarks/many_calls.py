"""Fifty thousand drawn calls, each with what no call may do: python -m tests.benchmarks.many_calls [CALLS].

Writes what came of them into many_calls.txt beside this file. They take about half an hour of one processor and are
shared among all that there are.
"""

from __future__ import annotations

import sys
import tempfile
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.calls.judged import AT_A_TIME, judged_calls
from tests.seed import SEED

CALLS = 50_000
RESULT = Path(__file__).with_suffix(".txt")


def batch_of(number: int) -> list[tuple[str, int, list[str]]]:
    """Words, exit code and wrongs of each call of one batch, in a folder that goes afterwards."""
    with tempfile.TemporaryDirectory() as folder:
        told = [(" ".join(call.words), code, wrong) for call, code, wrong in judged_calls(SEED, number, Path(folder))]
    return told


def main(calls: int) -> None:
    """Try so many calls and write how they ended."""
    codes: Counter[int] = Counter()
    wrongs: list[str] = []
    with ProcessPoolExecutor() as pool:
        for number, told in enumerate(pool.map(batch_of, range(-(-calls // AT_A_TIME)))):
            codes.update(code for _, code, _ in told)
            wrongs += [f"batch {number}: {words!r}: {', '.join(wrong)}" for words, _, wrong in told if wrong]
    lines = [f"{sum(codes.values())} calls, seed {SEED}"]
    lines += [f"{count} ended with {code}" for code, count in sorted(codes.items())]
    lines += [f"{len(wrongs)} did what no call may do", *wrongs]
    RESULT.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else CALLS)

"""How many drawn games the net plays as the second reader does: python -m tests.benchmarks.second_reader [GAMES].

Writes what it found into second_reader.txt beside this file. 20,000 games take about three quarters of an hour of
one processor; they are shared among all that there are.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.interpreter.drawn_readings import MOST_STATES, Drawn

GAMES = 20_000
SHOWN = 12
RESULT = Path(__file__).with_suffix(".txt")


def compared(number: int) -> str:
    """What became of one game, in one word or two."""
    game = Drawn(number)
    if game.against_records():
        return "not as the records say"
    if game.refused:
        return "refused"
    if game.net is None:
        return "too large"
    return "differs" if game.against_net() else "the same"


def main(games: int) -> None:
    """Compare so many games and write what became of them, with the numbers of the first that differ."""
    started = time.monotonic()
    found: dict[str, list[int]] = {}
    with ProcessPoolExecutor() as pool:
        for number, word in enumerate(pool.map(compared, range(games), chunksize=20)):
            found.setdefault(word, []).append(number)
    counts = Counter({word: len(numbers) for word, numbers in found.items()})
    lines = [f"{games} drawn games, numbers 0 to {games - 1}, at most {MOST_STATES} situations each"]
    lines += [f"{count} {word}" for word, count in counts.most_common()]
    for word in ("not as the records say", "refused", "differs"):
        if word in found:
            lines.append(f"{word}: numbers {', '.join(map(str, found[word][:SHOWN]))}")
    lines.append(f"{time.monotonic() - started:.0f} s on all processors")
    RESULT.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else GAMES)

"""Every word of many sheets exchanged for another legal one: how many exchanges are refused, change the game, mean the
same, are told to be idle, or change nothing without a word.

Prints the numbers and keeps them in exchange_law.txt beside this file. Run with
`python -m tests.benchmarks.exchange_law [HOW MANY] [MINUTES]`.
"""

from __future__ import annotations

import os
import sys
import time
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from itertools import islice
from pathlib import Path

from attrs import frozen

from tests.net.exchange_sample import sample
from tests.net.exchange_sheets import of_generated, of_library, of_page
from tests.net.exchange_verdicts import Verdict

SEED = 10
GENERATED = 60
TOLD = tuple(each for each in Verdict if each is not Verdict.UNREAD)
WRONG = (Verdict.SILENT, Verdict.TRACEBACK, Verdict.TWO_NETS)


@frozen
class Told:
    """What became of one exchange: in which section of a sheet from where, and its words where it is wrong."""

    section: str
    source: str
    verdict: Verdict
    words: str


def table(tried: list[Told]) -> Iterator[str]:
    """By section, and the silent ones line by line."""
    counts = Counter((each.section, each.verdict) for each in tried)
    sources = Counter(each.source for each in tried)
    parts = ", ".join(f"{number} of {source}" for source, number in sorted(sources.items()))
    yield f"{len(tried)} exchanges of one word for another legal one ({parts})"
    yield f"{'section':<8}" + "".join(f"{each.value:>16}" for each in TOLD)
    for section in dict.fromkeys(sorted(each.section for each in tried)):
        yield f"{section:<8}" + "".join(f"{counts[section, each]:>16}" for each in TOLD)
    yield f"{'all':<8}" + "".join(f"{sum(each.verdict is kind for each in tried):>16}" for kind in TOLD)
    yield from sorted({f"{each.verdict.value}: {each.words}" for each in tried if each.verdict in WRONG})


def tried_in_turn(turn: int, of: int, most: int, minutes: float) -> list[Told]:
    """What one of several processes tries: every so-manieth exchange, until its share or the time is used up."""
    until = time.monotonic() + 60 * minutes
    places = (*of_library(), *of_page(), *of_generated(SEED, GENERATED))
    told: list[Told] = []
    for each in islice(sample(places, SEED, turn, of), most // of):
        words = each.words() if each.verdict in WRONG else ""
        told.append(Told(each.place.section, each.place.source, each.verdict, words))
        if time.monotonic() > until:
            break
    return told


def main() -> None:
    """Try so many (30,000 unless said otherwise), for so many minutes at most, one process for each core; print the
    numbers and keep them."""
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 30_000
    minutes = float(sys.argv[2]) if len(sys.argv) > 2 else 60
    cores = os.cpu_count() or 1
    with ProcessPoolExecutor(cores) as pool:
        shares = [pool.submit(tried_in_turn, turn, cores, most, minutes) for turn in range(cores)]
        tried = [each for share in shares for each in share.result()]
    text = "\n".join((f"seed {SEED}", *table(tried))) + "\n"
    Path(__file__).with_suffix(".txt").write_text(text, encoding="utf-8")
    print(text, end="")


if __name__ == "__main__":
    main()

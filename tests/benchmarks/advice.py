"""Every advice for 2,000 spoiled sheets, taken; and how often a slip of one word is answered with the line as it was.

Prints the numbers and keeps them in advice.txt beside this file. Run with `python -m tests.benchmarks.advice`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from tests.advised import advices, helps, written
from tests.proofreading import judge_of
from tests.slips import KINDS, slips, spoiled_sheets

SEED = 1
SHEETS = 2000
SLIPS = 2100


def advice_taken() -> Iterator[str]:
    """How many advices were taken, and which of them did not help."""
    mistakes, taken, false = 0, 0, list[str]()
    for name, text in spoiled_sheets(SEED, SHEETS):
        judge = judge_of(name)
        before = judge(text)
        mistakes += len(before)
        for advice in advices(text, before):
            taken += 1
            if not helps(advice, before, judge):
                false.append(f"  {name}, line {advice.finding.place.line}: {advice.line}")
    yield f"{SHEETS} spoiled sheets: {mistakes} mistakes, {taken} advices, {len(false)} without help"
    yield from false


def slips_answered() -> Iterator[str]:
    """For each kind of slip, how many are told, and for how many of these the line as it was is offered."""
    told, offered = Counter[str](), Counter[str]()
    for slip in slips(SEED, SLIPS):
        found = judge_of(slip.file)(slip.text)
        told[slip.kind] += bool(found)
        offered[slip.kind] += slip.was.strip() in [line for finding in found for line in written(finding.hint)]
    yield f"{SLIPS} slips of one word:"
    for kind in KINDS:
        yield f"  {kind:<16} {told[kind]:>5} told, the line offered for {offered[kind] / told[kind]:>4.0%}"
    told_in_all, offered_in_all = sum(told.values()), sum(offered.values())
    yield f"  {'all':<16} {told_in_all:>5} told, the line offered for {offered_in_all / told_in_all:>4.0%}"


def main() -> None:
    """Print all numbers, and keep them."""
    text = "\n".join((f"seed {SEED}", *advice_taken(), *slips_answered())) + "\n"
    Path(__file__).with_suffix(".txt").write_text(text, encoding="utf-8")
    print(text, end="")


if __name__ == "__main__":
    main()

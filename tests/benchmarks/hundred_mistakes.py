"""How long a sheet with a hundred mistakes takes to tell, of each kind, in seconds of the processor.

Prints numbers, judges nothing. Run with `python -m tests.benchmarks.hundred_mistakes`. Aim: 1.5 s.
"""

from __future__ import annotations

import time

from grammar.mistakes.proofread import proofread
from library import kit_categories
from tests.many_mistakes import SHEETS


def main() -> None:
    """Print one line for each kind of sheet; every kind is told once before, in small, so that all is loaded."""
    for make in SHEETS.values():
        proofread(make(4).encode(), "many.rules", kit_categories())
    for kind, make in SHEETS.items():
        text = make()
        begun = time.process_time()
        found = proofread(text.encode(), "many.rules", kit_categories())
        taken = time.process_time() - begun
        offered = sum(bool(each.corrections) for each in found)
        print(f"{kind:<18} {taken:>6.2f} s  {len(found):>4} told, a line offered for {offered}", flush=True)


if __name__ == "__main__":
    main()

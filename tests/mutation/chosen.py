"""Which tests may notice a mutant: those that touch its line, quickest first, then others that touch its file.

The others are asked, too, for what is kept in a cache is touched by the test that came first alone.
"""

from __future__ import annotations

import pickle
from functools import cache

import attrs

from tests.mutation.mutants import ROOT, Mutant

KEPT = ROOT / ".mutation"
COVERED = KEPT / "covered.pickle"
OTHERS_S = 8  # processor time of the others


@attrs.frozen
class Covered:
    """What one test touches, lines as the bits of a number, and its processor time when that was recorded."""

    seconds: float
    lines: dict[str, int]


@cache
def known() -> dict[str, Covered]:
    found: dict[str, Covered] = pickle.loads(COVERED.read_bytes()) if COVERED.exists() else {}
    return found


def chosen(mutant: Mutant, covered: dict[str, Covered]) -> list[str]:
    touching = sorted((each.seconds, name) for name, each in covered.items() if mutant.path in each.lines)
    bit = 1 << mutant.line
    direct = [name for _, name in touching if covered[name].lines[mutant.path] & bit]
    others = [name for _, name in touching if name not in direct]
    in_time, spent = [], 0.0
    for name in others:
        spent += covered[name].seconds
        if spent < OTHERS_S:
            in_time.append(name)
    return direct + in_time

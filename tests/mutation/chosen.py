"""Which tests may notice a mutant: those that touch its line, quickest first, then others that touch its file.

With those that touch it go more cases of the same tests. The others are asked, too, for what is kept in a cache is
touched by the test that came first alone.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable
from functools import cache
from itertools import accumulate

import attrs

from tests.mutation.mutants import ROOMS, ROOT, Mutant

KEPT = ROOT / ".mutation"
COVERED = KEPT / "covered.pickle"
DIRECT_S, OTHERS_S = 8, 2  # processor time, as it was recorded, of the tests that are asked


@attrs.frozen
class Covered:
    """What one test touches, lines as the bits of a number, and its processor time when that was recorded."""

    seconds: float
    lines: dict[str, int]


@cache
def known() -> dict[str, Covered]:
    found: dict[str, Covered] = pickle.loads(COVERED.read_bytes()) if COVERED.exists() else {}
    return found


def chosen(mutant: Mutant, covered: dict[str, Covered], collected: Iterable[str] = ()) -> list[str]:
    touching = sorted((each.seconds, name) for name, each in covered.items() if mutant.path in each.lines)
    if not touching:
        return _of_room(mutant, covered)
    bit = 1 << mutant.line
    direct = [name for _, name in touching if covered[name].lines[mutant.path] & bit]
    asked = set(direct)
    others = [name for _, name in touching if name not in asked]
    tests = {name.split("[")[0] for name in direct}
    cases = [name for name in collected if name not in covered and name.split("[")[0] in tests]
    return [*_within(DIRECT_S, direct, covered), *cases, *_within(OTHERS_S, others, covered)]


def _of_room(mutant: Mutant, covered: dict[str, Covered]) -> list[str]:
    """For a file of which nothing runs but on loading: of each file of tests those that touch most of the room."""
    folders = tuple(f"{folder}/" for folder in ROOMS[mutant.room])
    most: dict[str, tuple[int, str]] = {}
    for name, each in covered.items():
        touched = sum(path.startswith(folders) for path in each.lines)
        file = name.split("::")[0]
        most[file] = max(most.get(file, (0, "")), (touched, name))
    return [name for touched, name in sorted(most.values(), reverse=True) if touched]


def _within(most_s: float, names: list[str], covered: dict[str, Covered]) -> list[str]:
    spent = accumulate(covered[name].seconds for name in names)
    return [name for name, seconds in zip(names, spent, strict=True) if seconds <= most_s]

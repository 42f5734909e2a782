"""How many games, remixes and numbers of pupils all outputs say the same of: python -m tests.benchmarks.ten_numbers.

Writes what it found into ten_numbers.txt beside this file: every library game and twenty remixes, each for 9, 17, 24,
27 and 32 pupils. It takes about a minute and a half of one processor.
"""

from __future__ import annotations

import time
from collections import Counter
from pathlib import Path

from tests.staging.outputs_shown import shown
from tests.staging.ten_cases import CASES, PUPILS, Case, staging_of

RESULT = Path(__file__).with_suffix(".txt")


def main() -> None:
    """Compare all cases and write how many numbers of each output agree, and every one that does not."""
    started = time.process_time()
    agreeing, differing, refused = Counter[str](), list[str](), list[str]()
    for case in (Case(name, modifiers, pupils) for name, modifiers in CASES for pupils in PUPILS):
        staging = staging_of(case)
        if staging.refused:
            refused.append(f"{_said(case)}: {staging.refused[0].title}")
            continue
        for output, said, wanted in shown(case, staging):
            wrong = [key for key, value in said.items() if value != wanted.get(key)]
            agreeing[output] += len(said) - len(wrong)
            differing += [f"{_said(case)}: {output}: {key} {said[key]!r}, not {wanted.get(key)!r}" for key in wrong]
    cases = len(CASES) * len(PUPILS)
    lines = [f"{cases} cases, {cases - len(refused)} played, {len(refused)} refused"]
    lines += [f"{output}: {count} numbers agree" for output, count in sorted(agreeing.items())]
    lines += [f"{len(differing)} differ", *differing]
    lines += ["refused:", *refused, f"{time.process_time() - started:.0f} s of processor time"]
    RESULT.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))


def _said(case: Case) -> str:
    return f"{case.name}{''.join(f' with {each}' for each in case.modifiers)} for {case.pupils}"


if __name__ == "__main__":
    main()

"""Mutants: `record [TESTS]` what each test touches, `try [NUMBER [ROOM ...]]` some of each room, `again`, `report`."""

from __future__ import annotations

import json
import os
import pickle
import subprocess
import sys
from pathlib import Path

from tests.mutation.chosen import KEPT, known
from tests.mutation.mutants import ROOMS, ROOT, SEED, Mutant, drawn
from tests.mutation.report import report, tried

FOLDERS = ("modifiers net check", "share library", "grammar", "forecast", "interpreter staging telling",
           "answer care outside wrong_games told")  # fmt: skip
PARTS = [[f"tests/{each}" for each in part.split()] for part in FOLDERS]


def run_pytest(task: str, tests: list[str], examples: int = 5) -> None:
    call = [sys.executable, "-m", "pytest", "-q", "-s", "-p", "tests.mutation.trial", "-p", "no:cacheprovider", *tests]
    told = {"RULEWEAVE_MUTATION": task, "RULEWEAVE_EXAMPLES": str(examples)}
    subprocess.run(call, env=os.environ | told, cwd=ROOT, check=False)


def try_mutants(mutants: list[Mutant], examples: int = 5) -> None:
    (KEPT / "mutants").write_bytes(pickle.dumps(mutants))
    run_pytest("mutants", sorted({name.split("::")[0] for name in known()}), examples)


def main(command: str = "report", *more: str) -> None:
    KEPT.mkdir(exist_ok=True)
    if command == "record":
        for part in [list(more)] if more else PARTS:
            run_pytest("record", part)
    elif command == "try":
        number = int(more[0]) if more else 100
        by_room = [drawn(room, SEED, number) for room in more[1:] or ROOMS]
        turns = [mutants[turn] for turn in range(number) for mutants in by_room if turn < len(mutants)]
        done = {(each["path"], each["operator"], each["occurrence"]) for each in tried()}
        try_mutants([each for each in turns if (each.path, each.operator, each.occurrence) not in done])
    elif command == "again":
        names = [json.loads(line) for line in (KEPT / "tried.jsonl").read_text(encoding="utf-8").splitlines()]
        last = {(each["path"], each["operator"], each["occurrence"]): each for each in names}
        try_mutants([Mutant(each["room"], each["path"], each["operator"], each["occurrence"], each["line"])
                     for each in last.values() if each["outcome"] != "noticed"], examples=40)  # fmt: skip
    else:
        (Path(__file__).parent / "result.txt").write_text(report(), encoding="utf-8")


main(*sys.argv[1:])

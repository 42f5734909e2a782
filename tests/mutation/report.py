"""What came of the mutants, by room: noticed, equivalent with the reason of each, survived; and branches covered."""

from __future__ import annotations

import difflib
import json
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import coverage

from tests.mutation.chosen import KEPT
from tests.mutation.mutants import ROOMS, ROOT, SEED, Mutant, source_of

EQUIVALENT = Path(__file__).parent / "equivalent.toml"
PARTS = ("noticed", "equivalent", "survived", "undecided")


def tried() -> list[dict[str, Any]]:
    """What came of each mutant, the last time that it was tried."""
    path = KEPT / "tried.jsonl"
    if not path.exists():
        return []
    told = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()]
    return list({(each["path"], each["operator"], each["occurrence"]): each for each in told}.values())


def reasons() -> dict[str, str]:
    """Why a mutant is the same program, by its name."""
    read = tomllib.loads(EQUIVALENT.read_text(encoding="utf-8"))
    return {each["mutant"]: each["reason"] for each in read["equivalent"]}


def report() -> str:
    return "\n".join((f"seed {SEED}", *_numbers(), "", *_branches(), *_one_by_one())) + "\n"


def name_of(told: dict[str, Any]) -> str:
    return mutant_of(told).name


def mutant_of(told: dict[str, Any]) -> Mutant:
    return Mutant(told["room"], told["path"], told["operator"], told["occurrence"], told["line"])


def outcome_of(told: dict[str, Any]) -> str:
    return "equivalent" if told["outcome"] != "noticed" and name_of(told) in reasons() else told["outcome"]


def _numbers() -> Iterator[str]:
    every = tried()
    yield f"{'room':<12}{'tried':>12}" + "".join(f"{part:>12}" for part in PARTS)
    for room in (*ROOMS, "all"):
        came = [outcome_of(each) for each in every if room in (each["room"], "all")]
        yield f"{room:<12}{len(came):>12}" + "".join(f"{came.count(part):>12}" for part in PARTS)


def _branches() -> Iterator[str]:
    """How many of the branches of each room the recorded tests take."""
    measured = coverage.Coverage(data_file=str(KEPT / "whole"), config_file=False, branch=True)
    measured.combine([str(path) for path in KEPT.glob("branches.*")], keep=True)
    yield f"{'room':<12}{'branches':>12}{'taken':>12}"
    for room, folders in ROOMS.items():
        kept = KEPT / "branches.json"
        measured.json_report(outfile=str(kept), include=[f"{ROOT}/{folder}/*" for folder in folders])
        totals = json.loads(kept.read_text(encoding="utf-8"))["totals"]
        share = totals["covered_branches"] / totals["num_branches"]
        yield f"{room:<12}{totals['num_branches']:>12}{share:>12.0%}"


def _one_by_one() -> Iterator[str]:
    """What nobody noticed."""
    for each in tried():
        if each["outcome"] != "noticed":
            yield f"\n{outcome_of(each)}: {name_of(each)}"
            yield from difference(mutant_of(each))
            if outcome_of(each) == "equivalent":
                yield f"  {reasons()[name_of(each)]}"


def difference(mutant: Mutant) -> list[str]:
    before, after = source_of(mutant.path).splitlines(), mutant.source().splitlines()
    told = difflib.unified_diff(before, after, n=0, lineterm="")
    return [line for line in told if not line.startswith(("---", "+++", "@@"))]

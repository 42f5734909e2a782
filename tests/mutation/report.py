"""What came of the mutants, by room: noticed, survived, equivalent with the reason of each."""

from __future__ import annotations

import difflib
import json
from collections.abc import Iterator
from typing import Any

from tests.mutation.chosen import KEPT
from tests.mutation.mutants import ROOMS, Mutant, source_of


def tried() -> list[dict[str, Any]]:
    """What came of each mutant, the last time that it was tried."""
    path = KEPT / "tried.jsonl"
    if not path.exists():
        return []
    told = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()]
    return list({(each["path"], each["operator"], each["occurrence"]): each for each in told}.values())


def report() -> str:
    return "\n".join(lines())


def lines() -> Iterator[str]:
    every = tried()
    for room in ROOMS:
        of_room = [each["outcome"] for each in every if each["room"] == room]
        yield f"{room:10} {len(of_room):4} tried {of_room.count('noticed'):4} noticed " \
              f"{of_room.count('undecided'):4} not decided {of_room.count('survived'):4} survived"  # fmt: skip
    for each in every:
        if each["outcome"] != "noticed":
            yield ""
            yield " ".join(str(each[part]) for part in ("room", "path", "line", "operator", "occurrence", "outcome"))
            yield from difference(Mutant(*(each[name] for name in ["room", "path", "operator", "occurrence", "line"])))


def difference(mutant: Mutant) -> list[str]:
    before, after = source_of(mutant.path).splitlines(), mutant.source().splitlines()
    told = difflib.unified_diff(before, after, n=0, lineterm="")
    return [line for line in told if not line.startswith(("---", "+++", "@@"))]

"""What every game takes for granted, as a tree."""

from __future__ import annotations

from functools import cache

from grammar.parse import parse_bytes
from grammar.tree import GameSheet
from library.load import granted_path


@cache
def granted_sheet() -> GameSheet:
    """The sheet of the rules that hold where a game says nothing else."""
    path = granted_path()
    outcome = parse_bytes(path.read_bytes(), str(path.relative_to(path.parents[1])))
    assert outcome.value is not None, outcome.findings
    return outcome.value.games[0]

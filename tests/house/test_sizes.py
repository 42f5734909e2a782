"""A file holds one idea, and a function fits a screen."""

from __future__ import annotations

import ast
from functools import cache

from sources import ROOT, modules, modules_of_tests, nodes

MOST_LINES = 250
MOST_FUNCTION_LINES = 45

# What is longer today, to be split. Nothing joins these lists.
LONG_FILES: frozenset[str] = frozenset()
LONG_FUNCTIONS = frozenset(
    (
        "compose/terminal/share_commands.py:_common_commands",
        "compose/terminal/shelf_commands.py:_shelf_rounds",
        "compose/terminal/shelf_commands.py:_shelf_things",
    )
)


def long_files() -> dict[str, int]:
    """Files with too many lines, and how many they have."""
    every = (*modules(), *modules_of_tests())
    lengths = {path.relative_to(ROOT).as_posix(): len(path.read_text(encoding="utf-8").splitlines()) for path in every}
    return {name: lines for name, lines in lengths.items() if lines > MOST_LINES}


@cache
def long_functions() -> dict[str, int]:
    """Functions that do not fit a screen, as file:name, and how many lines they have."""
    found: dict[str, int] = {}
    for path in (*modules(), *modules_of_tests()):
        for node in nodes(path):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                lines = (node.end_lineno or 0) - node.lineno + 1
                if lines > MOST_FUNCTION_LINES:
                    found[f"{path.relative_to(ROOT).as_posix()}:{node.name}"] = lines
    return found


def test_files_are_short() -> None:
    too_long = {name: lines for name, lines in long_files().items() if name not in LONG_FILES}
    assert not too_long


def test_functions_are_short() -> None:
    too_long = {name: lines for name, lines in long_functions().items() if name not in LONG_FUNCTIONS}
    assert not too_long


def test_lists_of_exceptions_are_no_longer_than_they_must_be() -> None:
    assert long_files().keys() >= LONG_FILES
    assert long_functions().keys() >= LONG_FUNCTIONS

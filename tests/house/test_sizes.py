"""A file holds one idea, and a function fits a screen."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from sources import ROOT, modules, test_modules, tree

MOST_LINES = 250
MOST_FUNCTION_LINES = 45

# What is longer today, to be split. Nothing joins these lists.
LONG_FILES = frozenset[str]()
LONG_FUNCTIONS = frozenset[str]()

every_file = pytest.mark.parametrize(
    "path", (*modules(), *test_modules()), ids=lambda path: str(path.relative_to(ROOT))
)


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def long_functions(path: Path) -> list[str]:
    """Functions with more lines than fit, as file:name."""
    functions = (node for node in ast.walk(tree(path)) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))
    return [
        f"{name_of(path)}:{function.name}"
        for function in functions
        if (function.end_lineno or 0) - function.lineno + 1 > MOST_FUNCTION_LINES
    ]


@every_file
def test_file_is_short(path: Path) -> None:
    lines = len(path.read_text(encoding="utf-8").splitlines())
    assert lines <= MOST_LINES or name_of(path) in LONG_FILES, f"{name_of(path)} has {lines} lines"


@every_file
def test_functions_are_short(path: Path) -> None:
    too_long = set(long_functions(path)) - LONG_FUNCTIONS
    assert not too_long, f"longer than {MOST_FUNCTION_LINES} lines: {', '.join(sorted(too_long))}"


def test_lists_of_exceptions_are_no_longer_than_they_must_be() -> None:
    files = {name_of(path) for path in (*modules(), *test_modules())}
    lengths = {name_of(path): len(path.read_text(encoding="utf-8").splitlines()) for path in (*modules(), *test_modules())}
    assert files >= LONG_FILES
    assert all(lengths[name] > MOST_LINES for name in LONG_FILES)
    found = {name for path in (*modules(), *test_modules()) for name in long_functions(path)}
    assert found >= LONG_FUNCTIONS

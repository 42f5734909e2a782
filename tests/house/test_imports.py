"""Imports go one way: from text to terminal, never back."""

from __future__ import annotations

import ast
import sys
from pathlib import Path

import pytest
from sources import ROOT, at_the_top, dotted, imported, modules, tree

ORDER = (
    "grammar",
    "library",
    "compose.modifiers",
    "compose.net",
    "compose.check",
    "compose.forecast",
    "compose.fit",
    "compose.draw",
    "compose.share",
    "compose.terminal",
)
OURS = ("grammar", "library", "compose", "tests")
GRAMMAR_NEEDS = frozenset(("attrs", "attr", "lark"))
ONLY_FOR_THE_TERMINAL = frozenset(("typer", "rich", "click"))
SLOW_TO_LOAD = frozenset(("scipy", "networkx", "reportlab", "rich", "hypothesis"))

every_module = pytest.mark.parametrize("path", modules(), ids=dotted)


def stage(module: str) -> int | None:
    """How far from the text a module of ours is; None for what is not ours."""
    fitting = [number for number, name in enumerate(ORDER) if module == name or module.startswith(f"{name}.")]
    return max(fitting) if fitting else None


@every_module
def test_module_imports_only_earlier_stages(path: Path) -> None:
    own = stage(dotted(path))
    for node in ast.walk(tree(path)):
        for name in imported(node):
            if name.split(".")[0] not in OURS or name in OURS:
                continue
            theirs = stage(name)
            assert theirs is not None or name == "compose", f"{dotted(path)} imports {name}"
            assert own is not None and theirs is not None and theirs <= own, f"{dotted(path)} imports {name}"


@every_module
def test_module_imports_libraries_where_they_belong(path: Path) -> None:
    own = dotted(path)
    for node in ast.walk(tree(path)):
        for name in imported(node):
            top = name.split(".")[0]
            if own.split(".")[0] == "grammar" and top not in GRAMMAR_NEEDS | set(OURS):
                assert is_of_python(top), f"{own} imports {name}"
            if top in ONLY_FOR_THE_TERMINAL:
                assert own.startswith("compose.terminal"), f"{own} imports {name}"


def is_of_python(name: str) -> bool:
    return name in sys.stdlib_module_names


@every_module
def test_slow_libraries_are_loaded_only_where_they_are_needed(path: Path) -> None:
    for node in at_the_top(tree(path)):
        for name in imported(node):
            assert name.split(".")[0] not in SLOW_TO_LOAD, f"{dotted(path)} loads {name} at once"


def test_nothing_relative() -> None:
    for path in modules():
        for node in ast.walk(tree(path)):
            assert not (isinstance(node, ast.ImportFrom) and node.level), f"{dotted(path)}:{node.lineno}"


def test_order_names_every_folder() -> None:
    folders = {f"compose.{path.name}" for path in (ROOT / "compose").iterdir() if (path / "__init__.py").exists()}
    assert folders == {name for name in ORDER if name.startswith("compose.")}

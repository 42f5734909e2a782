"""Names say what is inside, only the terminal prints, and no mark of unfinished work is left."""

from __future__ import annotations

import ast
import re
from collections import Counter
from pathlib import Path

import pytest
from sources import ROOT, dotted, modules, test_modules, tracked, tree

SAYS_NOTHING = frozenset(
    ("util", "utils", "helper", "helpers", "misc", "common", "manager", "managers", "tools", "stuff", "base_utils")
)
TOP_LEVEL = frozenset(
    (".ci", ".github", ".gitignore", "DEVELOPERS.md", "LICENSE", "README.md", "compose", "grammar", "library")
    + ("pyproject.toml", "tests")
)
# Written in pieces, so that this file does not hold what it forbids.
OF_THIS_MACHINE = re.compile("|".join(("/wo" + "rk/", "/ro" + "ot/", "/ho" + "me/", r"\.lib" + "rary/", "sha" + "red/design")))
LEFT_OVER = re.compile(r"\b(TO" + "DO|FIX" + "ME|XX" + "X)\b")


def test_module_names_say_something() -> None:
    for path in (*modules(), *test_modules()):
        assert path.stem not in SAYS_NOTHING, path
        assert path.parent.name not in SAYS_NOTHING, path


def test_test_modules_have_names_of_their_own() -> None:
    """Tests are no packages (tests/library would hide the library), so their names must differ."""
    assert not [path for path in test_modules() if path.name == "__init__.py"]
    names = Counter(path.stem for path in test_modules())
    assert not [name for name, times in names.items() if times > 1]


@pytest.mark.parametrize("path", [path for path in modules() if "terminal" not in path.parts], ids=dotted)
def test_only_the_terminal_prints(path: Path) -> None:
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            assert node.func.id not in ("print", "input"), f"{dotted(path)}:{node.lineno} prints"
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "sys":
            assert node.attr not in ("stdout", "stderr", "stdin", "exit"), f"{dotted(path)}:{node.lineno}"


@pytest.mark.parametrize("path", tracked(), ids=lambda path: str(path.relative_to(ROOT)))
def test_file_names_no_place_of_one_machine(path: Path) -> None:
    text = path.read_bytes().decode("utf-8", "replace")
    found = OF_THIS_MACHINE.search(text)
    assert not found, f"{path}: {found.group() if found else ''}"
    if path.suffix in (".py", ".lark", ".md", ".toml"):
        assert not LEFT_OVER.search(text), path


def test_top_level_holds_only_what_was_agreed() -> None:
    assert {path.relative_to(ROOT).parts[0] for path in tracked()} <= TOP_LEVEL


@pytest.mark.parametrize("path", modules(), ids=dotted)
def test_every_module_and_public_function_says_what_it_is_for(path: Path) -> None:
    module = tree(path)
    if path.name != "__init__.py" or module.body:
        assert ast.get_docstring(module), dotted(path)
    for node in module.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            assert ast.get_docstring(node), f"{dotted(path)}.{node.name}"

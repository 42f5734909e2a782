"""Names say what is inside, only the terminal prints, and no mark of unfinished work is left."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator

from sources import ROOT, dotted, modules, modules_of_tests, nodes, tracked, tree

SAYS_NOTHING = frozenset(("util", "utils", "helper", "helpers", "misc", "common", "manager", "tools", "stuff"))
TOP_LEVEL = frozenset(
    (
        *(".ci", ".github", ".gitignore", "DEVELOPERS.md", "LICENSE", "README.md", "pyproject.toml"),
        *("compose", "grammar", "library", "tests"),
    )
)
# Written in pieces, so that this file does not hold what it forbids.
OF_ONE_MACHINE = re.compile("/(wo" + "rk|ro" + "ot|ho" + r"me)/|\.lib" + "rary/|sha" + "red/design")
LEFT_OVER = re.compile(r"\b(?:TO" + r"DO|FIX" + r"ME|XX" + r"X)\b")
WRITTEN_BY_HAND = (".py", ".lark", ".md", ".toml", ".rules")


def test_module_names_say_something() -> None:
    paths = (*modules(), *modules_of_tests())
    assert not [str(path) for path in paths if SAYS_NOTHING & {path.stem, path.parent.name}]


def test_test_modules_have_names_of_their_own() -> None:
    """Tests are no packages (tests/library would hide the library), so their names must differ, but for what pytest
    itself looks for in each folder."""
    assert not [path for path in modules_of_tests() if path.name == "__init__.py"]
    names = Counter(path.stem for path in modules_of_tests() if path.stem != "conftest")
    assert not [name for name, times in names.items() if times > 1]


def speaks(node: ast.AST) -> bool:
    """Whether a piece of a program talks to the terminal."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        return node.func.id in ("print", "input")
    if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
        return node.value.id == "sys" and node.attr in ("stdout", "stderr", "stdin", "exit")
    return False


def test_only_the_terminal_prints() -> None:
    quiet = [path for path in modules() if not dotted(path).startswith("compose.terminal")]
    assert not [f"{dotted(path)}:{ast.unparse(node)}" for path in quiet for node in nodes(path) if speaks(node)]


def test_no_file_names_a_place_of_one_machine() -> None:
    for path in tracked():
        found = OF_ONE_MACHINE.search(path.read_bytes().decode("utf-8", "replace"))
        assert not found, f"{path}: {found.group() if found else ''}"


def test_no_work_is_left_over() -> None:
    by_hand = [path for path in tracked() if path.suffix in WRITTEN_BY_HAND]
    assert not [str(path) for path in by_hand if LEFT_OVER.search(path.read_text(encoding="utf-8", errors="replace"))]


def test_top_level_holds_only_what_was_agreed() -> None:
    assert {path.relative_to(ROOT).parts[0] for path in tracked()} <= TOP_LEVEL


def unexplained(module: ast.Module) -> Iterator[str]:
    """What a module leaves without a word: itself, or a function or class for others."""
    if module.body and not ast.get_docstring(module):
        yield "the module"
    named = (node for node in module.body if isinstance(node, ast.FunctionDef | ast.ClassDef))
    yield from (node.name for node in named if not node.name.startswith("_") and not ast.get_docstring(node))


def test_modules_and_public_functions_say_what_they_are_for() -> None:
    assert not [f"{dotted(path)}: {name}" for path in modules() for name in unexplained(tree(path))]

"""Imports go one way: from text to terminal, never back."""

from __future__ import annotations

import ast
import sys
from functools import cache

from sources import ROOT, at_the_top, dotted, imported, modules, nodes, tree

ORDER = (
    "grammar",
    "library",
    "compose.staging",
    "compose.care",
    "compose.modifiers",
    "compose.net",
    "compose.check",
    "compose.telling",
    "compose.forecast",
    "compose.answer",
    "compose.fit",
    "compose.draw",
    "compose.share",
    "compose.page",
    "compose.terminal",
)
READING = ("sheet", "phrases", "set_up", "play", "events", "consequences", "finish")
OURS = ("grammar", "library", "compose", "tests")
GRAMMAR_NEEDS = frozenset(("attrs", "attr", "lark"))
ONLY_FOR_THE_TERMINAL = frozenset(("typer", "rich", "click"))
SLOW_TO_LOAD = frozenset(("scipy", "networkx", "reportlab", "rich", "hypothesis"))


@cache
def imports() -> tuple[tuple[str, str], ...]:
    """Every module of ours with every name that it imports, wherever the import stands."""
    return tuple((dotted(path), name) for path in modules() for node in nodes(path) for name in imported(node))


def stage(module: str) -> int | None:
    """How far from the text a module of ours is; None for what belongs to no stage."""
    fitting = [number for number, name in enumerate(ORDER) if module == name or module.startswith(f"{name}.")]
    return max(fitting) if fitting else None


def goes_back(own: str, name: str) -> bool:
    """Whether an import of ours names a later stage, or something that is no stage."""
    if name.split(".")[0] not in OURS or name == "compose":
        return False
    here, there = stage(own), stage(name)
    return here is None or there is None or there > here


def test_modules_import_only_earlier_stages() -> None:
    assert not [f"{own} imports {name}" for own, name in imports() if goes_back(own, name)]


def test_grammar_needs_only_its_parser_and_its_values() -> None:
    known = GRAMMAR_NEEDS | sys.stdlib_module_names | {"grammar"}
    needs = [f"{own} imports {name}" for own, name in imports() if own.split(".")[0] == "grammar"]
    assert not [said for said in needs if said.rsplit(" ", 1)[1].split(".")[0] not in known]


def test_only_the_terminal_knows_the_terminal() -> None:
    elsewhere = [(own, name) for own, name in imports() if not own.startswith("compose.terminal")]
    assert not [f"{own} imports {name}" for own, name in elsewhere if name.split(".")[0] in ONLY_FOR_THE_TERMINAL]


def test_slow_libraries_are_loaded_only_where_they_are_needed() -> None:
    at_once = [
        f"{dotted(path)} loads {name} at once"
        for path in modules()
        for node in at_the_top(tree(path))
        for name in imported(node)
        if name.split(".")[0] in SLOW_TO_LOAD
    ]
    assert not at_once


def test_no_import_is_relative() -> None:
    every = ((path, node) for path in modules() for node in nodes(path))
    assert not [dotted(path) for path, node in every if isinstance(node, ast.ImportFrom) and node.level]


def test_order_names_every_folder() -> None:
    folders = {f"compose.{path.name}" for path in (ROOT / "compose").iterdir() if (path / "__init__.py").exists()}
    assert folders == {name for name in ORDER if name.startswith("compose.")}


def test_the_floor_reads_the_core_alone() -> None:
    words = ("grammar.sentences", "grammar.meanings", "grammar.game", "grammar.tree", "grammar.topics")
    floor = [(own, name) for own, name in imports() if own.startswith("compose.staging.floor.")]
    assert floor
    assert not [f"{own} imports {name}" for own, name in floor if name.startswith(words)]


def test_the_rooms_of_the_reading_build_on_earlier_ones() -> None:
    room = "grammar.core.reading"
    order = {f"{room}.{name}": number for number, name in enumerate(READING)}
    between = [[".".join(name.split(".")[:4]) for name in pair] for pair in imports() if pair[0].startswith(f"{room}.")]
    assert {own for own, _ in between} >= order.keys()
    back = [f"{own} imports {name}" for own, name in between if own in order and name.startswith(room)
            and order.get(name, len(order)) > order[own]]  # fmt: skip
    assert not back

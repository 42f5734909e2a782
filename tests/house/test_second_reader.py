"""The second reader reads trees by itself: it shares no code with what it is compared with."""

from __future__ import annotations

import sys

from sources import ROOT, dotted, imported, nodes

COMPARING = ("compare", "drawn_readings", "remixes", "sheets", "small")
MAY_READ = ("grammar.parse", "grammar.tree", "grammar.sentences", "grammar.span", "library", "tests.interpreter")


def reader() -> list[str]:
    """Every import of the reader itself: of all files of its folder that neither compare nor test."""
    paths = [
        path
        for path in sorted((ROOT / "tests" / "interpreter").rglob("*.py"))
        if path.stem not in COMPARING and not path.stem.startswith("test_")
    ]
    return [f"{dotted(path)} imports {name}" for path in paths for node in nodes(path) for name in imported(node)]


def allowed(name: str) -> bool:
    """Whether the second reader may import a module."""
    first = name.split(".")[0]
    if first in ("attrs", "__future__") or first in sys.stdlib_module_names:
        return True
    comparing = any(name.startswith(f"tests.interpreter.{each}") for each in COMPARING)
    return not comparing and any(name == each or name.startswith(f"{each}.") for each in MAY_READ)


def test_the_second_reader_takes_only_the_tree() -> None:
    said = reader()
    assert said
    assert not [each for each in said if not allowed(each.rsplit(" ", 1)[1])]


def test_what_is_compared_may_not_be_read() -> None:
    for name in ("grammar.resolve", "grammar.game", "grammar.meanings", "grammar.core", "compose.net", "compose.check"):
        assert not allowed(name)

"""Nothing after the core reads sentences of the tree or asks what a name of the sheet means.

Modifiers change sheets, and a sheet is a tree; merging compares the lines of two.
"""

from __future__ import annotations

import ast

from sources import dotted, imported, modules, nodes

ON_TREES = ("compose.modifiers.", "compose.share.merge.")
ASKING = ("vocabulary", "meaning")  # what a game of the tree answers about its names


def after_the_core() -> list[tuple[str, tuple[ast.AST, ...]]]:
    """The files of compose/ with their nodes, but for those whose work is with trees."""
    named = ((dotted(path), nodes(path)) for path in modules())
    return [(name, found) for name, found in named if name.startswith("compose.") and not name.startswith(ON_TREES)]


def test_no_file_reads_sentences() -> None:
    tree = ("grammar.sentences", "grammar.reading", "grammar.topics")
    assert not {
        name
        for name, found in after_the_core()
        for node in found
        for other in imported(node)
        if any(other == part or other.startswith(f"{part}.") for part in tree)
    }


def test_no_file_asks_what_a_name_means() -> None:
    assert not [
        name
        for name, found in after_the_core()
        for node in found
        if isinstance(node, ast.Attribute) and node.attr in ASKING
    ]

"""No two modules need each other to be loaded, however far round."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterable
from pathlib import Path

import networkx as nx
from sources import at_the_top, dotted, imported, modules, nodes, tree

# Circles that are closed only while the program runs, by an import inside a function. Nothing joins this list.
CLOSED_LATE = (
    {
        "compose.terminal.typed.finding_games",
        "compose.terminal.remix_files",
    },  # a game may be a remix, and comes from games
    {"compose.terminal.main", "compose.terminal.start"},  # the door loads the commands once Ctrl-C is heard
)


def circles(parts: Callable[[Path], Iterable[ast.AST]]) -> list[set[str]]:
    """The modules that need each other by the import statements among these parts of each."""
    own = {dotted(path): path for path in modules()}
    edges = ((name, other) for name, path in own.items() for node in parts(path) for other in imported(node))
    graph = nx.DiGraph((name, other) for name, other in edges if other in own)
    assert len(graph) > 300 and not list(nx.selfloop_edges(graph))
    return [part for part in nx.strongly_connected_components(graph) if len(part) > 1]


def test_no_imports_go_round_in_a_circle() -> None:
    assert not circles(lambda path: at_the_top(tree(path)))


def test_nor_do_late_ones_but_for_those_listed() -> None:
    found = circles(nodes)
    assert sorted(map(sorted, found)) == sorted(map(sorted, CLOSED_LATE))

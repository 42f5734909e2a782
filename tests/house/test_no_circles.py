"""No two modules need each other to be loaded, however far round."""

from __future__ import annotations

import ast
from collections.abc import Iterator

import networkx as nx
from sources import at_the_top, dotted, imported, modules, tree


def at_once(module: ast.Module) -> Iterator[str]:
    """What a module imports as it is loaded."""
    for node in at_the_top(module):
        yield from imported(node)


def test_no_imports_go_round_in_a_circle() -> None:
    own = {dotted(path): path for path in modules()}
    graph = nx.DiGraph((name, other) for name, path in own.items() for other in at_once(tree(path)) if other in own)
    assert len(graph) > 300
    circles = [sorted(part) for part in nx.strongly_connected_components(graph) if len(part) > 1]
    assert not circles
    assert not list(nx.selfloop_edges(graph))

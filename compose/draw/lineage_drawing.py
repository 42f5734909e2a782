"""A lineage as a drawing: bases on the left, each remix to the right of what it was made of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any

from compose.draw.signs.lettering import shortened
from compose.draw.signs.palette import ACCENT, DARK, FAINT, MIDDLE, WARNING, WHITE
from compose.draw.signs.shapes import Drawing, Ink, Label, Shape, arrow, rectangle
from compose.staging.floor.values import Rectangle

if TYPE_CHECKING:
    import networkx as nx

WIDE, HIGH, APART = 7.0, 1.0, 6.5  # of a box, and between two columns; drawing units
LETTERS, SMALL = 0.36, 0.27
LINE = SMALL * 1.25
MARGIN = 0.6


def lineage_drawing(graph: nx.DiGraph[str]) -> Drawing:
    """The drawing of a lineage; its nodes have `kind`, its edges `how` and `stale`."""
    places = _places(graph)
    right = max((x for x, _ in places.values()), default=0.0) + WIDE + MARGIN
    low = min((y for _, y in places.values()), default=0.0) - HIGH - MARGIN
    shapes = [shape for base, remix in graph.edges for shape in _step(graph, places, base, remix)]
    shapes += [shape for title in graph for shape in _box(graph, places, title)]
    described = "; ".join(f"{remix} was made of {base}" for base, remix in graph.edges) or "No remixes."
    box = Rectangle(-MARGIN, low, right, MARGIN + _lettered(graph))
    return Drawing("Lineage of games and remixes", described, box, tuple(shapes))


def _lettered(graph: nx.DiGraph[str]) -> float:
    """How high the words over an arrow may stand above a box."""
    most = max((len(_said(step)) for _, _, step in graph.edges(data=True)), default=0)
    return max(0.0, most * LINE - HIGH / 2 + 0.2)


def _said(step: Mapping[str, Any]) -> list[str]:
    """What stands on an arrow: the modifiers in order, and whether the base has changed."""
    return [*(step["how"] or ["no change"]), *(["the base has changed since"] if step["stale"] else [])]


def _places(graph: nx.DiGraph[str]) -> dict[str, tuple[float, float]]:
    """The top left corner of each box: a column for each generation, a row for each line of descent."""
    import networkx as nx

    tree = graph if nx.is_directed_acyclic_graph(graph) else nx.DiGraph()
    tree.add_nodes_from(graph)
    column = {title: depth for depth, layer in enumerate(nx.topological_generations(tree)) for title in layer}
    places: dict[str, tuple[float, float]] = {}
    row, high = 0, HIGH + 0.4 + _lettered(graph)

    def place(title: str) -> None:
        nonlocal row
        if title in places:
            return
        places[title] = (column[title] * (WIDE + APART), -row * high)
        below = [remix for remix in tree.successors(title) if remix not in places]
        for number, remix in enumerate(below):
            row += bool(number)
            place(remix)

    for title in sorted(tree, key=lambda name: column[name]):
        if title not in places:
            place(title)
            row += 1
    return places


def _box(graph: nx.DiGraph[str], places: dict[str, tuple[float, float]], title: str) -> Iterator[Shape]:
    x, y = places[title]
    kind = graph.nodes[title]["kind"]
    fill = {"game": ACCENT, "remix": FAINT}.get(kind, WHITE)
    dash = (0.15, 0.15) if kind == "unknown" else None
    yield rectangle(Rectangle(x, y - HIGH, x + WIDE, y), Ink(fill, DARK, 0.04, dash))
    words = shortened(title, LETTERS, WIDE - 0.4, bold=True)
    colour = WHITE if kind == "game" else DARK
    yield Label(x + WIDE / 2, y - HIGH / 2 - LETTERS / 3, words, LETTERS, colour, "middle", bold=True)


def _step(graph: nx.DiGraph[str], places: dict[str, tuple[float, float]], base: str, remix: str) -> Iterator[Shape]:
    """The arrow from a base to a remix with what was done on it; another colour where the base has changed."""
    step = graph.edges[base, remix]
    (left, top), (right, level) = places[base], places[remix]
    colour = WARNING if step["stale"] else MIDDLE
    start, end = (left + WIDE, top - HIGH / 2), (right, level - HIGH / 2)
    yield from arrow(start, end, 0.3, Ink(stroke=colour, width_m=0.05))
    how = _said(step)
    for number, words in enumerate(how):
        x, y = end[0] - 0.45, end[1] + 0.12 + LINE * (len(how) - 1 - number)
        text = shortened(words, SMALL, APART - 0.8)
        yield Label(x, y, text, SMALL, colour if words.startswith("the base") else DARK, "end", halo=WHITE)

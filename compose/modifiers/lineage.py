"""Who comes from whom: games, the remixes made of them, the remixes of those, as a graph that people read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from compose.modifiers.content_hash import content_hash
from grammar.frozen import frozen
from grammar.sentences import remix as said
from grammar.sentences.modifier import Block
from grammar.tree import GameSheet, RemixSheet

if TYPE_CHECKING:
    import networkx as nx


@frozen
class Descent:
    """One step of a lineage: what a remix was made of and how. `stale` where its base has changed since;
    `unknown` where the base is not at hand."""

    base: str
    remix: str
    how: tuple[str, ...]
    stale: bool
    unknown: bool


def descents(
    games: Iterable[GameSheet], remixes: Sequence[RemixSheet], made: Iterable[GameSheet] = ()
) -> tuple[Descent, ...]:
    """The steps between these sheets, in the order of the remixes; `made` are what the remixes make, for those
    that are bases themselves."""
    contents = {game.title.lower(): content_hash(game) for game in (*games, *made)}
    titles = {sheet.title.lower() for sheet in remixes} | set(contents)
    return tuple(step for sheet in remixes for step in _descent(sheet, contents, titles))


def _descent(sheet: RemixSheet, contents: dict[str, str], titles: set[str]) -> Iterator[Descent]:
    for line in sheet.lines:
        if isinstance(line.sentence, said.BasedOn):
            base = line.sentence.base
            known = contents.get(base.lower())
            stale = bool(known and line.sentence.content and line.sentence.content != known)
            yield Descent(base, sheet.title, tuple(_how(sheet)), stale, base.lower() not in titles)


def _how(sheet: RemixSheet) -> Iterator[str]:
    """The modifiers in order, and how many edits of its own the remix has."""
    own = 0
    for line in sheet.lines:
        if isinstance(line.sentence, said.Use):
            yield line.sentence.modifier + "".join(f", {setting.words()}" for setting in line.sentence.settings)
        elif isinstance(line.sentence, Block):
            own += len(line.block)
    if own:
        yield f"{own} own {'edit' if own == 1 else 'edits'}"


def lineage(
    games: Iterable[GameSheet], remixes: Sequence[RemixSheet], made: Iterable[GameSheet] = ()
) -> nx.DiGraph[str]:
    """The lineage as a graph: a node for each title, an edge from base to remix with `how` and `stale`."""
    import networkx as nx

    games = tuple(games)
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from((game.title, {"kind": "game"}) for game in games)
    for step in descents(games, remixes, made):
        base = next((title for title in graph if title.lower() == step.base.lower()), step.base)
        if base not in graph:
            graph.add_node(base, kind="unknown" if step.unknown else "remix")
        graph.add_node(step.remix, kind="remix")
        graph.add_edge(base, step.remix, how=step.how, stale=step.stale)
    return graph


def only_remixed(graph: nx.DiGraph[str]) -> nx.DiGraph[str]:
    """The graph without games of which nobody made a remix."""
    alone = [title for title in graph if graph.degree(title) == 0]
    return graph.subgraph([title for title in graph if title not in alone]).copy()


def lineage_lines(graph: nx.DiGraph[str]) -> Iterator[str]:
    """The lineage as indented text: each remix below its base, with what was done to it."""
    roots = [title for title in graph if graph.in_degree(title) == 0]
    shown: set[str] = set()
    for root in roots or list(graph)[:1]:
        yield from _below(graph, root, 0, shown)
    for title in graph:
        if title not in shown:
            yield f"{title} comes from itself: its bases go round in a circle"


def _below(graph: nx.DiGraph[str], title: str, depth: int, shown: set[str]) -> Iterator[str]:
    shown.add(title)
    missing = "  (not at hand)" if graph.nodes[title]["kind"] == "unknown" else ""
    yield "  " * depth + title + missing
    for remix in graph.successors(title):
        if remix in shown:
            continue
        step = graph.edges[title, remix]
        how = "; ".join(step["how"]) or "no change"
        stale = "  [its base has changed since]" if step["stale"] else ""
        yield "  " * (depth + 1) + f"└ with {how}{stale}"
        yield from _below(graph, remix, depth + 2, shown)

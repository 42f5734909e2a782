"""Graph facts against networkx and small graphs with a known verdict."""

from __future__ import annotations

import networkx as nx
import numpy as np
from hypothesis import given, settings

from compose.check.explore import explore
from compose.check.graph import backward, bottom_components, can_reach, distances, longest_line, loop_from
from compose.check.space import StateSpace
from compose.net.net import Net
from tests.check.build import Builder
from tests.check.random_nets import nets


def space_of(net: Net) -> StateSpace:
    space = explore(net)
    assert isinstance(space, StateSpace)
    return space


def as_networkx(space: StateSpace) -> nx.DiGraph[int]:
    graph: nx.DiGraph[int] = nx.DiGraph()
    graph.add_nodes_from(range(space.states))
    graph.add_edges_from(zip(space.sources().tolist(), space.targets.tolist(), strict=True))
    return graph


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_traps_are_the_attracting_components_without_end(net: Net) -> None:
    space = space_of(net)
    can_end = can_reach(space, backward(space, space.sources()), space.ended())
    found = [set(part.tolist()) for part in bottom_components(space, ~can_end)] if not can_end.all() else []
    ended = set(np.flatnonzero(space.ended()).tolist())
    expected = [set(part) for part in nx.attracting_components(as_networkx(space)) if not part & ended]
    assert sorted(found, key=min) == sorted(expected, key=min)


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_distances_to_an_end(net: Net) -> None:
    space = space_of(net)
    found = distances(space, backward(space, space.sources()), space.ended())
    goals = np.flatnonzero(space.ended()).tolist()
    expected = nx.multi_source_dijkstra_path_length(as_networkx(space).reverse(), goals) if goals else {}
    assert found.tolist() == [expected.get(state, -1) for state in range(space.states)]


@given(net=nets())
@settings(max_examples=150, deadline=None)
def test_longest_line(net: Net) -> None:
    space = space_of(net)
    graph = as_networkx(space)
    acyclic = nx.is_directed_acyclic_graph(graph)
    assert longest_line(space) == (nx.dag_longest_path_length(graph) if acyclic else None)


@given(net=nets())
@settings(max_examples=100, deadline=None)
def test_loop_is_a_shortest_cycle_through_the_state(net: Net) -> None:
    space = space_of(net)
    graph = as_networkx(space)
    for state in range(min(space.states, 6)):
        loop = loop_from(space, state)
        back = [
            nx.shortest_path_length(graph, there, state)
            for there in graph.successors(state)
            if nx.has_path(graph, there, state)
        ]
        assert len(loop) == (1 + min(back) if back else 0)
        here = state
        for edge in loop:
            assert edge in space.edges_from(here)
            here = int(space.targets[edge])
        assert here == state


def test_walk_between_two_ends_can_always_end() -> None:
    walk = Builder()
    walk.place("at", 2, 4)
    told = walk.rule("walk")
    walk.may("right", walk.shift("at", 1, told))
    walk.may("left", walk.shift("at", -1, told))
    walk.end("home", None, walk.at_least("at", 4), told)
    walk.end("out", None, walk.at_most("at", 0), told)
    space = space_of(walk.net())
    back = backward(space, space.sources())
    assert space.states == 5
    assert can_reach(space, back, space.ended()).all()
    assert longest_line(space) is None

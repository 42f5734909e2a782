"""Reachable markings of two library games, counted by a Petri-net library from nets drawn here by hand.

Library: SNAKES, F. Pommereau, "SNAKES: a flexible high-level Petri nets library", Petri Nets 2015, LNCS 9115.
Tokens are plain dots; a test arc looks at a token and leaves it. Play stops at an end, so every transition
tests that the round is not over.
"""

from __future__ import annotations

from typing import Any

import pytest

from compose.check import StateSpace, explore
from tests.interpreter.sheets import library_game, net_in

nets = pytest.importorskip("snakes.nets")
SIDES = ("one", "other")


def drawn(places: dict[str, int], transitions: dict[str, tuple[list[str], list[str], list[str]]]) -> Any:
    """A net of places with so many dots and of transitions (takes from, puts into, looks at)."""
    net = nets.PetriNet("by hand")
    for name, dots in places.items():
        net.add_place(nets.Place(name, [nets.dot] * dots))
    for name, (takes, puts, looks) in transitions.items():
        net.add_transition(nets.Transition(name))
        for place in takes:
            net.add_input(place, name, nets.Value(nets.dot))
        for place in puts:
            net.add_output(place, name, nets.Value(nets.dot))
        for place in looks:
            net.add_input(place, name, nets.Test(nets.Value(nets.dot)))
    return net


def markings(net: Any) -> int:
    """How many markings the library finds."""
    graph = nets.StateGraph(net)
    graph.build()
    return len(graph)


def states(name: str, players: int) -> int:
    """How many states the check finds in a library game."""
    game = library_game(name)
    space = explore(net_in(game, {side.name: players for side in game.sides}))
    assert isinstance(space, StateSpace) and space.complete
    return space.states


def test_lantern_row() -> None:
    """5 lanterns and 4 balls a side; every throw sends its ball over; over when a side has no lanterns standing."""
    places = {f"{side} {what}": dots for side in SIDES for what, dots in (("ball", 4), ("lantern", 5), ("fallen", 0))}
    transitions = {}
    for side, against in (SIDES, SIDES[::-1]):
        ball, over = f"{side} ball", f"{against} ball"
        lantern, own = f"{against} lantern", f"{side} lantern"
        transitions[f"{side} misses"] = ([ball], [over], [lantern, own])
        transitions[f"{side} knocks"] = ([ball, lantern], [over, f"{against} fallen"], [own])
    assert markings(drawn(places, transitions)) == states("lantern-row", 3)


@pytest.mark.parametrize("players", [6, 8])
def test_ferry_bench(players: int) -> None:
    """One of each side is on the bench at the start; five there win; a ball that misses goes to the other half."""
    places = {
        f"{side} {what}": dots
        for side in SIDES
        for what, dots in (("ball", 2), ("on court", players - 1), ("on bench", 1), ("room", 4))
    }
    transitions = {}
    for side, against in (SIDES, SIDES[::-1]):
        ball, court, room = f"{side} ball", f"{side} on court", f"{side} room"
        still = [f"{against} room", f"{side} on bench"]
        transitions[f"{side} passes"] = ([court, room], [f"{side} on bench"], [ball, f"{against} room"])
        transitions[f"{side} misses"] = ([ball], [f"{against} ball"], [court, room, *still])
    assert markings(drawn(places, transitions)) == states("ferry-bench", players)

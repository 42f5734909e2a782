"""A model in the PRISM language is the net: read back by itself, it has the same states, rates and ends."""

from __future__ import annotations

from collections import defaultdict

import pytest
from attrs import evolve
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from compose.check import Budget, StateSpace, explore
from compose.check.to_prism import Comments, prism_by_places, prism_by_states, to_prism
from compose.net.net import Net
from tests.check.brute import Plain, explore_plainly
from tests.check.build import Builder
from tests.check.cases import bell
from tests.check.prism_reader import Model, State, read
from tests.check.random_nets import nets

CONSTANTS = st.lists(st.sampled_from((0.0, 0.5, 3.0, 1e-7)), min_size=4, max_size=4)
MOST_STATES = 300


def plainly(net: Net, constants: list[float]) -> Plain:
    """The net without what never happens, explored one marking at a time."""
    possible = [(each, constant) for each, constant in zip(net.transitions, constants) if constant]  # noqa: B905
    return explore_plainly(evolve(net, transitions=tuple(each for each, _ in possible)))


def rates_of(plain: Plain, constants: list[float]) -> dict[tuple[State, State], float]:
    kept = [constant for constant in constants if constant]
    rates = defaultdict[tuple[State, State], float](float)
    for source, transition, target, factor in plain.edges:
        rates[plain.states[source], plain.states[target]] += factor * kept[transition]
    return dict(rates)


def ends_of(model: Model, states: list[State], number: int) -> list[int]:
    """Which end holds in each state by the labels, -1 where play goes on."""
    found = []
    for state in states:
        held = [end for end in range(number) if model.holds(model.labels[f"end_{end + 1}"], state)]
        assert model.holds(model.labels["over"], state) == bool(held) and len(held) < 2
        found.append(held[0] if held else -1)
    return found


@given(nets(), CONSTANTS)
def test_by_places_it_is_the_net(net: Net, constants: list[float]) -> None:
    net = evolve(net, reactions=())
    plain = plainly(net, constants[: len(net.transitions)])
    assume(len(plain.states) <= MOST_STATES)
    model = read(prism_by_places(net, constants[: len(net.transitions)]))
    states, rates = model.walked()
    assert states == plain.states
    assert rates == pytest.approx(rates_of(plain, constants[: len(net.transitions)]))
    assert ends_of(model, states, len(net.ends)) == plain.ends


@given(nets(), CONSTANTS)
def test_by_states_it_is_the_net(net: Net, constants: list[float]) -> None:
    """Also where something follows at once."""
    constants = [constant or 2.0 for constant in constants][: len(net.transitions)]
    plain = explore_plainly(net)
    space = explore(net, Budget(states=MOST_STATES))
    assume(isinstance(space, StateSpace) and space.complete and not plain.chases)
    assert isinstance(space, StateSpace)
    states, rates = (model := read(prism_by_states(space, constants))).walked()
    assert sorted(states) == [(number,) for number in range(len(plain.states))]
    found = {(plain.states[one], plain.states[other]): rate for ((one,), (other,)), rate in rates.items()}
    assert found == pytest.approx(rates_of(plain, constants))
    assert ends_of(model, states, len(net.ends)) == [plain.ends[number] for (number,) in states]


def test_what_follows_at_once_alone_asks_for_numbered_states() -> None:
    """Else each place is a variable that says its name; what cannot be numbered is refused."""
    play = Builder("north", "south")
    told = play.rule("points")
    for number in range(8):
        play.place(f"points {number} of north-east", 0, 999)
        play.may("a point", play.shift(f"points {number} of north-east", 1, told))
    net = play.net(bell(play))
    written = to_prism(net, [1.0] * len(net.transitions)).value
    assert written is not None and "after 6 minutes" in written
    assert all(f"  points_{number}_of_north_east : [0..999]" in written for number in range(8))
    play.when("at once", play.at_least("points 0 of north-east", 9), play.shift("points 1 of north-east", 1, told))
    refused = to_prism(play.net(), [1.0] * len(net.transitions))
    assert refused.value is None and [each.code for each in refused.findings] == ["C-prism-size"]


@given(nets())
@settings(max_examples=10)
def test_what_stands_beside_it_changes_nothing(net: Net) -> None:
    constants = [1.0] * len(net.transitions)
    beside = Comments(*(tuple(f"told {each}" for each in range(len(every)))
                        for every in (net.places, net.transitions, net.ends)))  # fmt: skip
    bare, told = (to_prism(net, constants, each).value for each in (Comments(), beside))
    assert bare is not None and told is not None
    assert read(bare) == read(told)
    assert told.count("told") >= len(net.ends)

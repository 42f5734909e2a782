"""The exploration against a plain one, and its limits."""

from __future__ import annotations

from importlib import import_module

import numpy as np
import pytest
from hypothesis import given, settings

from compose.check.encoding import encoding
from compose.check.explore import TooLarge, explore
from compose.check.numbering import Numbering
from compose.check.space import Budget, StateSpace, markings
from compose.net.net import Net
from tests.benchmarks.lantern_net import lantern_row
from tests.check.brute import explore_plainly
from tests.check.build import Builder
from tests.check.random_nets import nets


def whole(net: Net, dense_limit: int = 50_000_000) -> StateSpace:
    space = explore(net, dense_limit=dense_limit)
    assert isinstance(space, StateSpace) and space.complete
    return space


@pytest.mark.parametrize("dense_limit", [50_000_000, 0], ids=["table", "hashed"])
@given(net=nets() | nets(fixed=True))
@settings(max_examples=150, deadline=None)
def test_same_as_plain_exploration(dense_limit: int, net: Net) -> None:
    plain = explore_plainly(net)
    space = whole(net, dense_limit=dense_limit)
    assert [tuple(row) for row in markings(space, np.arange(space.states)).tolist()] == plain.states
    assert space.end_of.tolist() == plain.ends
    edges = list(zip(space.sources().tolist(), space.transitions.tolist(), space.targets.tolist(), strict=True))
    assert edges == [edge[:3] for edge in plain.edges]
    assert space.factors.tolist() == pytest.approx([edge[3] for edge in plain.edges])
    assert set(space.chases) == plain.chases


@given(net=nets())
@settings(max_examples=100, deadline=None)
def test_log_of_effects_same_as_plain(net: Net) -> None:
    plain, space = explore_plainly(net), whole(net)
    for kind, logs in (("transition", space.happened), ("reaction", space.reacted)):
        for number, log in enumerate(logs):
            for position, changed in enumerate(log.changed):
                assert changed == ((kind, number, position) in plain.changed)


def test_looked_at_a_few_at_once_all_is_as_plain(monkeypatch: pytest.MonkeyPatch) -> None:
    """Also where something sets itself off for ever late in play."""
    monkeypatch.setattr(import_module("compose.check.explore"), "CHUNK", 2)
    play = Builder()
    play.place("steps", 0, 9)
    play.place("lamp", 0, 1)
    told = play.rule("a step, and from the seventh on the lamp goes on and off")
    play.may("step", play.shift("steps", 1, told))
    play.may("light", play.shift("lamp", 1, told), guard=play.at_least("steps", 7))
    play.when("off", play.at_least("lamp", 1), play.assign("lamp", 0, told))
    play.when("on", play.at_most("lamp", 0), play.assign("lamp", 1, told))
    plain, space = explore_plainly(play.net()), whole(play.net())
    assert len(set(space.chases)) == 3 and set(space.chases) == plain.chases
    assert space.targets.tolist() == [edge[2] for edge in plain.edges]


@given(net=nets())
@settings(max_examples=100, deadline=None)
def test_parents_make_a_shortest_line(net: Net) -> None:
    space = whole(net)
    depth = [0] * space.states
    for state in range(1, space.states):
        parent = int(space.parents[state])
        edge = [e for e in space.edges_from(parent) if space.targets[e] == state]
        assert int(space.by[state]) in [int(space.transitions[e]) for e in edge]
        depth[state] = depth[parent] + 1
    for source, target in zip(space.sources(), space.targets, strict=True):
        assert depth[target] <= depth[source] + 1


def test_large_case_has_the_known_size() -> None:
    space = whole(lantern_row(14, 6, 8))
    assert space.states == 90_384
    assert int(space.ended().sum()) == 26_880
    assert space.encoding.size == 99_225


def test_duel_of_three_and_two() -> None:
    """3 against 2, each side out one by one: (3 + 1) * (2 + 1) - 1 markings, 5 of them ends."""
    duel = Builder("a", "b")
    for side, players in (("a", 3), ("b", 2)):
        duel.place(side, players, 3, "player")
        duel.place(f"{side} out", 0, 3, "player", final=True)
    told = duel.rule("whoever is hit is out")
    duel.may("b hits", duel.move("a", "a out", told), rate=duel.rate("b"))
    duel.may("a hits", duel.move("b", "b out", told), rate=duel.rate("a"))
    duel.end("b wins", "b", duel.at_most("a", 0), told)
    duel.end("a wins", "a", duel.at_most("b", 0), told)
    space = whole(duel.net())
    assert (space.states, int(space.ended().sum())) == (11, 5)


def test_conserved_place_needs_no_digit() -> None:
    net = lantern_row(14, 6, 8)
    code = encoding(net)
    assert sorted(group.total for group in code.groups) == [6, 6, 8, 14, 14]
    assert len(code.digits) == 5


def test_starting_again_keeps_the_total() -> None:
    """Assigning every place of a group its start value does not break conservation; a part does."""
    for assigned, groups in ((("up", "down"), 1), (("up",), 0)):
        again = Builder()
        again.place("up", 3, 3)
        again.place("down", 0, 3)
        told = again.rule("start again")
        start = {"up": 3, "down": 0}
        again.may("fall", again.move("up", "down", told), rate=again.rate("up"))
        again.may("again", *(again.assign(name, start[name], told) for name in assigned))
        assert len(encoding(again.net()).groups) == groups


def test_budget_stops_and_says_so() -> None:
    space = explore(lantern_row(14, 6, 8), Budget(states=10_000))
    assert isinstance(space, StateSpace)
    assert not space.complete
    assert space.expanded < space.states < 90_384
    assert space.unexpanded == space.states - space.expanded
    assert len(space.end_of) == space.states and len(space.offsets) == space.states + 1
    assert space.offsets[-1] == space.edges


def test_too_many_codes() -> None:
    many = Builder()
    told = many.rule("points")
    for number in range(8):
        many.place(f"points {number}", 0, 999)
        many.may("a point", many.shift(f"points {number}", 1, told))
    found = explore(many.net())
    assert isinstance(found, TooLarge) and found.size == 10**24


@pytest.mark.parametrize("below", [2**15, 2**30, 2**31 - 1, 2**31, 2**32])
def test_codes_hold_what_no_32_bits_do(below: int) -> None:
    """A count that rises by several at once, with about so many codes for all that stands behind it."""
    built = Builder()
    told = built.rule("points")
    built.place("points", 0, 9)
    built.place("behind", 0, below - 1)
    built.may("points", built.shift("points", 3, told))
    built.may("behind", built.shift("behind", 1, told))
    space = explore(built.net(), Budget(states=60))
    assert isinstance(space, StateSpace)
    found = markings(space, np.arange(space.states))
    assert set(found[:, 0].tolist()) == {0, 3, 6, 9}
    assert found[:, 1].min() == 0 and found[:, 1].max() < 60


def test_hashed_numbers_survive_growth() -> None:
    generator = np.random.default_rng(5)
    numbering = Numbering(2**62, dense_limit=0)
    known: dict[int, int] = {}
    for size in (10, 1000, 200_000, 50_000):
        codes = generator.integers(0, 150_000, size) * (2**40 + 1)
        numbers, fresh = numbering.number(codes)
        for place in fresh.tolist():
            known[int(codes[place])] = len(known)
        assert numbers.tolist() == [known[code] for code in codes.tolist()]

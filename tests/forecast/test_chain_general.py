"""The chain on any net: against other solvers, and where play may never end or was not explored."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import expm

from compose.check import Budget, StateSpace, explore
from compose.forecast.chain import chain as chain_module
from compose.forecast.chain import solve as chain_solve
from compose.forecast.chain.absorb import absorb
from compose.forecast.chain.bell import until
from compose.forecast.chain.chain import Chain, Floats, chain
from compose.forecast.chain.durations import lengths
from compose.net.net import Net
from tests.benchmarks.lantern_net import lantern_row
from tests.check.build import Builder
from tests.check.cases import rally
from tests.check.chance_games import Game, race
from tests.check.random_nets import nets

CONSTANTS = st.lists(st.sampled_from((0.0, 0.5, 1.0, 3.0)), min_size=4, max_size=4)


def lantern_chain(players: int, lanterns: int, balls: int) -> Chain:
    net = lantern_row(players, lanterns, balls)
    space = explore(net)
    assert isinstance(space, StateSpace)
    chances = {"success": 0.3, "caught": 0.2, "missed": 0.5}
    return chain(space, [4 * chances[move.outcome] for move in net.transitions])


def dense(space: StateSpace, constants: list[float]) -> tuple[Floats, Floats]:
    """The generator of all states, ends as absorbing, and the rates without self-loops."""
    rates = np.zeros((space.states, space.states))
    per_edge = space.factors * np.array(constants)[space.transitions]
    np.add.at(rates, (space.sources(), space.targets), per_edge)
    np.fill_diagonal(rates, 0)
    return rates - np.diag(rates.sum(axis=1)), rates


@given(net=nets(), constants=CONSTANTS)
@settings(max_examples=100, deadline=None)
def test_bell_as_by_matrix_exponential(net: Net, constants: list[float]) -> None:
    space = explore(net)
    assert isinstance(space, StateSpace)
    constants = constants[: len(net.transitions)]
    result = until(chain(space, constants), 1.5)
    generator, _ = dense(space, constants)
    there = expm(1.5 * generator)[0]
    for number in range(len(net.ends)):
        assert result.by_end[number] == pytest.approx(there[space.end_of == number].sum(), abs=1e-9)
    assert result.running == pytest.approx(there[space.end_of < 0].sum(), abs=1e-9)
    assert result.by_end.sum() + result.running == pytest.approx(1, abs=1e-9)


@given(net=nets(), constants=CONSTANTS)
@settings(max_examples=100, deadline=None)
def test_odds_as_by_long_powers(net: Net, constants: list[float]) -> None:
    """Squaring the lazy jump matrix over and over gives the odds, and where play never ends."""
    space = explore(net)
    assert isinstance(space, StateSpace)
    constants = constants[: len(net.transitions)]
    result = absorb(chain(space, constants))
    generator, _ = dense(space, constants)
    jump = np.eye(space.states) + generator / max(1.0, -2 * generator.min())
    for _ in range(60):
        jump = jump @ jump
        jump /= jump.sum(axis=1, keepdims=True)  # rounding would double with every squaring
    assert result.never == pytest.approx(jump[0][space.end_of < 0].sum(), abs=1e-8)
    for number in range(len(net.ends)):
        assert result.by_end[number] == pytest.approx(jump[0][space.end_of == number].sum(), abs=1e-8)
    assert math.isinf(result.mean) == (result.never > 0)
    assert result.by_end.sum() + result.never == pytest.approx(1, abs=1e-9)


def test_same_as_a_library_of_markov_chains() -> None:
    """PyDTMC's absorbing chain on the jumps of a small lantern game."""
    pydtmc = pytest.importorskip("pydtmc")
    small = lantern_chain(2, 1, 2)
    rates = dense(
        small.space,
        [4 * {"success": 0.3, "caught": 0.2, "missed": 0.5}[t.outcome] for t in small.space.net.transitions],
    )[1]
    ends = small.space.ended()
    jump = np.where(ends[:, None], np.eye(len(ends)), rates / np.maximum(rates.sum(axis=1), 1e-300)[:, None])
    model = pydtmc.MarkovChain(jump, [str(state) for state in range(len(ends))])
    result = absorb(small)
    library = model.absorption_probabilities()[:, 0]
    absorbing = np.array([int(state) for state in model.absorbing_states])
    for number in range(len(small.space.net.ends)):
        told = library[small.space.end_of[absorbing] == number].sum()
        assert result.by_end[number] == pytest.approx(told, abs=1e-9)
    steps = model.mean_absorption_times()[0]
    moving = small.space.sources() != small.space.targets
    spent = np.zeros(small.space.states)
    spent[small.running] = small.spread(result.time)
    assert (spent[small.space.sources()] * small.rates)[moving].sum() == pytest.approx(steps, rel=1e-9)


def test_every_way_of_solving_agrees(monkeypatch: pytest.MonkeyPatch) -> None:
    game = lantern_chain(4, 2, 3)
    dense = absorb(game)
    monkeypatch.setattr(chain_solve, "DENSE", 0)
    reference = absorb(game)
    assert dense.by_end == pytest.approx(reference.by_end, abs=1e-12)
    assert dense.mean == pytest.approx(reference.mean, rel=1e-12)
    monkeypatch.setattr(chain_solve, "FEW", 0)
    monkeypatch.setattr(chain_solve, "SMALL", 0)
    iterated = absorb(game)
    monkeypatch.setattr(chain_solve, "TURNS", 0)
    fallen_back = absorb(game)
    assert [r.method for r in (reference, iterated, fallen_back)] == ["direct", "iterated", "direct"]
    for result in (iterated, fallen_back):
        assert result.by_end == pytest.approx(reference.by_end, abs=1e-11)
        assert result.mean == pytest.approx(reference.mean, rel=1e-11)
        assert result.deviation == pytest.approx(reference.deviation, rel=1e-7)


def test_mirror_images_fold_exactly(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chain_module, "FOLD_FROM", 10**9)
    plain = lantern_chain(4, 2, 4)
    monkeypatch.setattr(chain_module, "FOLD_FROM", 1)
    folded = lantern_chain(4, 2, 4)
    assert len(folded.leaving) < 0.6 * len(plain.leaving)
    assert len(lantern_chain(4, 2, 3).leaving) == len(lantern_chain(4, 2, 3).running), "odd ball: not symmetric"
    for one, other in ((absorb(plain), absorb(folded)), (until(plain, 2.0), until(folded, 2.0))):
        assert other.by_end == pytest.approx(one.by_end, abs=1e-12)
        assert other.mean == pytest.approx(one.mean, rel=1e-12)
        assert other.tokens == pytest.approx(one.tokens, rel=1e-12)
        assert other.firings == pytest.approx(one.firings, rel=1e-11)
    assert absorb(folded).deviation == pytest.approx(absorb(plain).deviation, rel=1e-9)


def to_and_fro() -> Game:
    """A ball from the middle goes to one side and then to and fro until somebody who has it is out, or scores."""
    play = Builder("north", "south")
    told = play.rule("whoever has the ball scores with it or sends it over")
    play.place("middle", 1, 1, "ball")
    for side in play.sides:
        play.place(f"{side} has it", 0, 1, "ball", side)
        play.place(side, 0, 2, side=side)
        play.may(f"{side} begins", play.move("middle", f"{side} has it", told))
    for side, other in (("north", "south"), ("south", "north")):
        having = play.at_least(f"{side} has it", 1)
        play.may(f"{side} sends it", play.move(f"{side} has it", f"{other} has it", told), guard=having)
        play.may(f"{side} scores", play.shift(side, 1, told), guard=having)
        play.end(f"{side} wins", side, play.at_least(side, 2), told)
    return Game(play.net(), (1.0, 1.0, 3.0, 0.5, 3.0, 0.5))


def test_what_leads_from_a_state_to_its_mirror_image_takes_no_time(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chain_module, "FOLD_FROM", 10**9)
    plain = to_and_fro().chain()
    monkeypatch.setattr(chain_module, "FOLD_FROM", 1)
    folded = to_and_fro().chain()
    assert len(folded.leaving) < len(plain.leaving)
    assert absorb(folded).mean == pytest.approx(absorb(plain).mean, rel=1e-9)
    assert until(folded, 3.0).by_end == pytest.approx(until(plain, 3.0).by_end, abs=1e-9)


def test_unequal_sides_do_not_fold(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(chain_module, "FOLD_FROM", 1)
    even, uneven = race(5, 1.0, 1.0).chain(), race(5, 1.0, 0.8).chain()
    assert len(even.leaving) == 15 and len(uneven.leaving) == 25


def test_play_that_may_never_end() -> None:
    """From the rally play ends or is held for ever, as likely as not."""
    game = Game(rally(way_out=False), (1.0, 1.0, 2.0, 2.0))
    result = absorb(game.chain())
    assert (result.by_end[0], result.never) == pytest.approx((0.5, 0.5))
    assert math.isinf(result.mean) and math.isinf(result.deviation)
    limited = until(game.chain(), 10_000.0)
    assert limited.running == pytest.approx(0.5, abs=1e-9)
    assert limited.mean == pytest.approx(5000.25, rel=1e-9)
    assert limited.walk.ticks < 1000, "what is at rest is not watched on"
    found = lengths(game.chain(), [2.0, 1e6], levels=(0.4, 0.6))
    assert found.within[0] == pytest.approx(math.log(5) / 2, rel=1e-8)
    assert math.isinf(found.within[1])
    assert found.over_by == pytest.approx([0.5 * (1 - math.exp(-4)), 0.5], abs=1e-9)


def test_chance_of_nothing_cuts_play_off() -> None:
    """A side that never scores leaves the states where it has points out, and the round still ends."""
    only_north = race(3, 1.0, 0.0).chain()
    assert len(only_north.running) == 3
    assert absorb(only_north).by_end == pytest.approx([1.0, 0.0])
    nobody = absorb(race(3, 0.0, 0.0).chain())
    assert nobody.never == 1.0 and math.isinf(nobody.mean)


def test_unexplored_is_a_class_of_its_own() -> None:
    net = lantern_row(6, 3, 4)
    chances = [{"success": 1.0, "caught": 0.5, "missed": 2.0}[move.outcome] for move in net.transitions]
    part, whole = explore(net, Budget(states=1500)), explore(net)
    assert isinstance(part, StateSpace) and isinstance(whole, StateSpace) and not part.complete
    known, exact = absorb(chain(part, chances)), absorb(chain(whole, chances))
    assert 0 < known.unknown < 1
    assert known.by_end.sum() + known.unknown == pytest.approx(1, abs=1e-9)
    assert (known.by_end <= exact.by_end + 1e-12).all()
    assert (exact.by_end <= known.by_end + known.unknown + 1e-12).all()


def test_round_that_is_over_at_once() -> None:
    over = race(3, 1.0, 1.0, scored=(3, 0)).chain()
    assert absorb(over).by_end == pytest.approx([1.0, 0.0]) and absorb(over).mean == 0.0
    assert until(over, 5.0).by_end == pytest.approx([1.0, 0.0])
    assert lengths(over, [1.0]).within == pytest.approx([0.0, 0.0])

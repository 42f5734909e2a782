"""Our numbers against a probabilistic model checker that reads our net in the PRISM language.

Model checker: C. Hensel, S. Junges, J.-P. Katoen, T. Quatmann, M. Volk, "The probabilistic model checker
Storm", International Journal on Software Tools for Technology Transfer 24(4), 2022, by its Python bindings.
They are no requirement: without them these tests are skipped. Chances and means are asked for in exact
arithmetic where the model is small, chances within a time in its usual one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from attrs import frozen
from hypothesis import given, settings
from hypothesis import strategies as st

import library
from compose.check import StateSpace, explore
from compose.check.to_prism import MOST_NUMBERED, prism_by_places, prism_by_states, to_prism
from compose.forecast.chain.absorb import absorb
from compose.forecast.chain.bell import until
from compose.forecast.chain.chain import Chain, chain
from compose.forecast.chances.chances import chances
from compose.net.net import Net
from tests.check.random_nets import nets
from tests.interpreter.sheets import library_game, net_in
from tests.interpreter.small import GAMES, players, small

stormpy = pytest.importorskip("stormpy")
MINUTES = (0.5, 3.0)
MOST_EXACT = 400  # states up to which chances and means are asked for in exact arithmetic


@frozen
class Verdict:
    """States, chances of each end, mean minutes until the end, and chances that it is over by `MINUTES`."""

    states: int
    by_end: tuple[float, ...]
    mean: float
    over_by: tuple[float, ...]


def asked(text: str, ends: int, folder: Path, most_exact: int = MOST_EXACT) -> Verdict:
    """What the model checker says of a model with so many ends; exactly up to so many states."""
    file = folder / "play.sm"
    file.write_text(text, encoding="utf-8")
    program = stormpy.parse_prism_program(str(file))
    chance = [f'P=? [F "end_{number + 1}"]' for number in range(ends)]
    mean, by_then = 'R{"minutes"}=? [F "over"]', [f'P=? [F<={minutes} "over"]' for minutes in MINUTES]
    questions = stormpy.parse_properties("; ".join([*chance, mean, *by_then]), program)
    usual = stormpy.build_model(program, questions)
    untimed, environment = usual, stormpy.environments.sound()
    if usual.nr_states <= most_exact:
        untimed, environment = stormpy.build_model[stormpy.Rational](program, questions), stormpy.environments.exact()
    answers = [_value(untimed, question, environment) for question in questions[: ends + 1]]
    answers += [_value(usual, question, None) for question in questions[ends + 1 :]]
    return Verdict(usual.nr_states, tuple(answers[:ends]), answers[ends], tuple(answers[ends + 1 :]))


def _value(model: Any, question: Any, environment: Any) -> float:
    result = stormpy.model_checking(model, question, environment=environment)
    return float(result.get_value(model.initial_states[0]))


def compare(
    space: StateSpace, constants: Sequence[float], text: str, folder: Path, most_exact: int = MOST_EXACT
) -> None:
    """State count, win odds, mean time and time-bounded reachability, to 1e-6 and better."""
    ours: Chain = chain(space, constants)
    theirs = asked(text, len(space.net.ends), folder, most_exact)
    alone = absorb(ours)
    close = 1e-9 if theirs.states <= most_exact else 1e-6
    assert list(theirs.by_end) == pytest.approx(alone.by_end.tolist(), abs=close)
    assert theirs.mean == (alone.mean if math.isinf(alone.mean) else pytest.approx(alone.mean, rel=2 * close))
    over_by = [1 - until(ours, minutes).running for minutes in MINUTES]
    assert list(theirs.over_by) == pytest.approx(over_by, abs=1e-6)
    if all(constant > 0 for constant in constants):
        assert theirs.states == space.states


@pytest.mark.parametrize("name", GAMES)
def test_library_game(name: str, tmp_path: Path) -> None:
    game = small(name)
    net = net_in(game, players(game))
    constants = chances(net, library.norms(), library.kit_names())
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    written = to_prism(net, constants.tolist())
    if written.value is None:
        assert net.reactions and space.states > MOST_NUMBERED
    else:
        compare(space, constants.tolist(), written.value, tmp_path)


def test_the_form_by_states_says_the_same(tmp_path: Path) -> None:
    net = net_in(library_game("lantern-row"), {"north": 2, "south": 2})
    space = explore(net)
    assert isinstance(space, StateSpace)
    constants = chances(net, library.norms(), library.kit_names()).tolist()
    by_places = asked(prism_by_places(net, constants), len(net.ends), tmp_path)
    by_states = asked(prism_by_states(space, constants), len(net.ends), tmp_path)
    assert by_states.states == by_places.states
    assert by_states.mean == pytest.approx(by_places.mean, rel=1e-12)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("prism")


@settings(max_examples=200)
@given(net=nets(), constants=st.lists(st.sampled_from((0.25, 1.0, 3.0, 7.5)), min_size=4, max_size=4))
def test_random_small_nets(folder: Path, net: Net, constants: list[float]) -> None:
    constants = constants[: len(net.transitions)]
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    written = to_prism(net, constants)
    assert written.value is not None
    compare(space, constants, written.value, folder, most_exact=0)

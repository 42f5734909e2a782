"""However many ways the outcome of an attempt is told apart, together they come as often as it is tried."""

from __future__ import annotations

from collections import defaultdict
from random import Random

import pytest

import library
from compose.check import StateSpace, explore
from compose.check.space import Budget
from compose.net.from_game import net_of
from compose.net.net import Net
from grammar.resolve import resolve
from tests.interpreter.drawn_readings import Drawn
from tests.interpreter.sheets import game_in, granted, library_game, net_in
from tests.interpreter.test_outside import CASES, SHADOWS, USUAL
from tests.net.sheet_pieces import THROW, net, rate
from tests.seed import SEED

MOST_STATES = 200


def shares_add_up(net: Net) -> None:
    """Of one attempt in one situation: a miss comes as often as a success, and a catch at most as often."""
    assert all(move.part > 0 for move in net.transitions), "what never happens is no move"
    space = explore(net, Budget(states=MOST_STATES))
    assert isinstance(space, StateSpace)
    often = defaultdict[tuple[object, ...], float](float)
    edges = zip(space.sources().tolist(), space.transitions.tolist(), space.factors.tolist(), strict=True)
    for state, number, factor in edges:
        move = net.transitions[number]
        often[state, move.attempt, move.outcome] += factor * move.part
    for (state, attempt, outcome), each in often.items():
        tried = often.get((state, attempt, "missed"), each)
        if outcome == "caught":
            assert each <= tried + 1e-9
        else:
            assert each == pytest.approx(tried), (attempt, outcome)


@pytest.mark.parametrize("number", Random(SEED).sample(range(1_000_000), 8))
def test_in_a_drawn_game(number: int) -> None:
    game = Drawn(number)
    resolved = resolve(game.tree, library.kit_categories()).value
    assert resolved is not None
    net = net_of(resolved, granted(), game.players).value
    assert net is not None
    shares_add_up(net)


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
def test_in_a_game_of_the_library(name: str) -> None:
    shares_add_up(net_in(library_game(name)))


def test_where_those_who_stand_in_the_half_throw() -> None:
    """Of two with one ball one throws, wherever the ball may stop."""
    play = net_in(game_in(SHADOWS.format(**(USUAL | CASES["before the line"]))), {"north": 2, "south": 2})
    shares_add_up(play)
    misses = [move for move in play.transitions if (move.side, move.outcome) == ("north", "missed")]
    assert sum(rate(play, move) * move.attempt.share * move.part for move in misses) == pytest.approx(1)


def test_what_cannot_happen_is_no_move() -> None:
    """As long as play goes on something stands: no move waits for what is over then."""
    for play in (THROW, "players roll a soft ball at the cones or the players of the other side"):
        found = net("a player is hit: that player is out", play)
        space = explore(found)
        assert isinstance(space, StateSpace) and space.complete
        assert set(space.transitions.tolist()) == set(range(len(found.transitions)))

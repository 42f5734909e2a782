"""Active time follows what pupils do: it falls with few balls, with seated play, with long waits; and over a class."""

from __future__ import annotations

from functools import cache

import pytest

import library
from compose.answer.answer import Answer
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.check import Budget
from compose.forecast.rounds.simulate import Play
from compose.modifiers.apply import remix
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.terminal.typed.finding_games import use
from tests.interpreter.sheets import library_game

LOOK, PLAY = Budget(states=3_000), Play(rounds=80)


@cache
def answer(name: str, pupils: int, *modifiers: str) -> Answer:
    game = library_game(name)
    if modifiers:
        made = remix(game, [use(each) for each in modifiers], library.kit_names()).value
        assert made is not None
        game = made.game
    ready = staged(stage(game, library.norms(), library.kit_names(), some_class(pupils)), library.granted_sheet()).value
    assert ready is not None
    return foreseen(proved(ready, LOOK), library.norms(), library.kit_names(), play=PLAY, budget=LOOK)


def active(name: str, pupils: int, *modifiers: str) -> float:
    share = answer(name, pupils, *modifiers).active_in_round
    assert share is not None and 0 < share < 1
    return share


@pytest.mark.parametrize("modifier", ["fewer balls, n 7", "seated play", "walking play"])
def test_less_to_do_is_less_active(modifier: str) -> None:
    assert active("lantern-row", 26, modifier) < 0.85 * active("lantern-row", 26)


def test_one_ball_for_a_class_leaves_them_standing() -> None:
    """Of eight balls seven are taken away: hardly more than the norm for time between turns is left."""
    alone = active("lantern-row", 26, "fewer balls, n 7")
    assert alone < 0.4 and alone < 0.6 * active("lantern-row", 26)
    found = {each.code for each in answer("lantern-row", 26, "fewer balls, n 7").findings}
    assert "F-inactive" in found


def test_whoever_is_over_counts_among_the_pupils() -> None:
    """Thirteen duels and one pupil who plays in none: turns and active time are those of 26, shared by 27."""
    even, odd = answer("toll-stone", 26), answer("toll-stone", 27)
    assert even.numbers is not None and odd.numbers is not None
    assert odd.numbers.turns.value == pytest.approx(even.numbers.turns.value * 26 / 27)
    assert odd.numbers.idle.value == pytest.approx((26 * even.numbers.idle.value + 1) / 27)
    assert odd.active_in_round == pytest.approx(active("toll-stone", 26) * 26 / 27)


def test_courts_of_other_sizes_are_weighed_by_their_pupils() -> None:
    """27 pupils in two games: one of 14 and one of 13."""
    both = answer("beck-gates", 27)
    assert len(both.others) == 1 and both.numbers is not None
    games = [(each.staged.pupils, each.forecast) for each in (both, *both.others)]
    assert sorted(pupils for pupils, _ in games) == [13, 14]
    turns = sum(pupils * told.turns.each.value for pupils, told in games if told is not None) / 27
    assert both.numbers.turns.value == pytest.approx(turns)

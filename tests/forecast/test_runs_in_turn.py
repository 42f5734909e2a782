"""A relay in the forecast: a run takes its time, the next goes when it is over, and all others wait."""

from __future__ import annotations

import numpy as np
import pytest

import library
from compose.forecast.chances.chances import chances, explain_chances
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.rounds.rounds import Rounds
from compose.forecast.rounds.simulate import Play
from compose.net.net import Net
from tests.interpreter.sheets import game_in, net_in

GAME = """
game Lane Relay
space
  court {length} m by 9 m, in one piece
  start strip: 2 m deep, before a back line
  far strip: 2 m deep, before the other back line
sides
  north and south, 1 to 12 players each
play
  players run from the start strip to the far strip{back}{at_once}
finish
  a side wins when it has run {times}
"""
USUAL = {"length": 18, "back": " and back", "at_once": ", only 1 player at a time", "times": "10 times"}


def net(north: int = 6, south: int = 6, **said: object) -> Net:
    return net_in(game_in(GAME.format(**USUAL | said)), {"north": north, "south": south})


def told(found: Net) -> Forecast:
    known = forecast(found, library.norms(), library.kit_names(), compare=False, play=Play(rounds=1_000, batch=1_000))
    assert known is not None
    return known


def seconds_of_a_run(found: Net) -> float:
    (known,) = explain_chances(found, library.norms(), library.kit_names()).values()
    return 60 / known.per_minute


def test_a_run_there_and_back_is_twice_as_far_and_takes_a_start_and_a_turn() -> None:
    there, both, far = (seconds_of_a_run(net(**said)) for said in ({"back": ""}, {}, {"length": 34}))
    start = 2 * there - both
    assert start == pytest.approx(2.0)
    assert far - start == pytest.approx(2 * (both - start))


@pytest.mark.parametrize("players", [2, 5, 10])
def test_all_but_one_wait(players: int) -> None:
    shares = {each.name: each.share.value for each in told(net(players, players)).standings}
    assert shares["waiting"] == pytest.approx(1 - 1 / players)
    assert shares["playing"] + shares["waiting"] == pytest.approx(1)


def test_who_runs_alone_never_waits() -> None:
    assert [each.name for each in told(net(1, 1)).standings if each.share.value > 0] == ["playing"]


def test_all_run_where_the_line_lets_them() -> None:
    assert [each.name for each in told(net(at_once="")).standings] == ["playing"]


@pytest.mark.parametrize("at_once", [1, 2])
def test_a_round_lasts_as_long_as_the_runs_of_the_quicker_side(at_once: int) -> None:
    found = net(at_once=f", only {at_once} player{'s' if at_once > 1 else ''} at a time")
    runs = 10 * seconds_of_a_run(found) / 60 / at_once
    assert 0.85 * runs < told(found).course.length.mean.value < runs


def test_a_run_is_as_far_from_the_mean_as_the_norm_says() -> None:
    """The sum of ten runs of one side that runs alone: mean and spread of a gamma law."""
    game = net_in(game_in(GAME.format(**USUAL).replace("a side wins", "north wins")), {"north": 1, "south": 1})
    constants = chances(game, library.norms(), library.kit_names())
    rounds = Rounds(game, constants, 4_000, np.random.default_rng(5), spread=0.2)
    while rounds.running:
        rounds.step()
    run = seconds_of_a_run(game) / 60
    assert rounds.minutes.mean() == pytest.approx(10 * run, rel=0.01)
    assert rounds.minutes.std() == pytest.approx(0.2 * run * 10**0.5, rel=0.06)


def test_a_side_with_fewer_players_runs_as_often_as_the_largest() -> None:
    ends = net(4, 5, times="2 times with each player").ends
    assert [getattr(each.guard, "bound", None) for each in ends] == [10, 10]

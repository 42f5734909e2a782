"""The two sentences for a card say what the forecast says, and stay away where it would take long."""

from __future__ import annotations

import library
from compose.check import Budget, StateSpace, explore
from compose.forecast.forecast import forecast
from compose.forecast.in_short import MOST_STATES, forecast_in_short
from compose.forecast.wording import minutes, percent
from compose.net.net import Net
from compose.terminal.stages import ready


def net(name: str) -> Net:
    return ready(name, [], 24).net


def space(name: str) -> StateSpace:
    found = explore(net(name))
    assert isinstance(found, StateSpace)
    return found


def test_same_as_the_whole_forecast() -> None:
    row = space("lantern row")
    first, second = forecast_in_short(row, library.kit_names())
    whole = forecast(row, library.norms(), library.kit_names(), compare=False)
    assert whole is not None
    assert minutes(whole.course.length.mean.value) in first
    assert f"stops {percent(whole.odds.running.value)}" in first
    assert f"{whole.turns.each.value:.1f} turns a minute" in second
    assert all(percent(chance.value) in second for _, chance in whole.odds.wins)


def test_where_nobody_wins_nobody_is_said_to() -> None:
    _, second = forecast_in_short(space("homestead"), library.kit_names())
    assert "win" not in second


def test_nothing_of_a_space_that_is_not_whole() -> None:
    cut = explore(net("lantern row"), Budget(states=50, seconds=60))
    assert isinstance(cut, StateSpace) and not cut.complete
    assert forecast_in_short(cut, library.kit_names()) == ()


def test_the_largest_game_of_the_library_is_small_enough() -> None:
    assert 1 < space("heron and pike").states <= MOST_STATES

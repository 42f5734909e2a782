"""The numbers for a card are those of the whole forecast, and stay away where they would take long."""

from __future__ import annotations

import library
from compose.check import Budget, StateSpace, explore
from compose.forecast.forecast import forecast
from compose.forecast.in_short import MOST_STATES, forecast_in_short
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
    short = forecast_in_short(row, library.kit_names())
    whole = forecast(row, library.norms(), library.kit_names(), compare=False)
    assert whole is not None and short is not None
    assert abs(short.minutes.value - whole.course.length.mean.value) < 0.01
    assert abs(short.stopped.value - whole.odds.running.value) < 0.001
    assert abs(short.turns.value - whole.turns.each.value) < 0.01
    assert [side for side, _ in short.wins] == [side for side, _ in whole.odds.wins]
    pairs = zip(short.wins, whole.odds.wins, strict=True)
    assert all(abs(mine.value - other.value) < 0.001 for (_, mine), (_, other) in pairs)


def test_nothing_of_a_space_that_is_not_whole() -> None:
    cut = explore(net("lantern row"), Budget(states=50, seconds=60))
    assert isinstance(cut, StateSpace) and not cut.complete
    assert forecast_in_short(cut, library.kit_names()) is None


def test_the_largest_game_of_the_library_is_small_enough() -> None:
    assert 1 < space("heron and pike").states <= MOST_STATES

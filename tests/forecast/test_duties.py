"""Tasks that pass from pupil to pupil, and sides that rest: shares of the time, and who is told what."""

from __future__ import annotations

from math import isclose

import pytest

import library
from compose.check import explore
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.telling.telling import told
from compose.staging.teams import teams_of
from tests.interpreter.sheets import game_in, net_in

KILNS = next(path for path in library.game_paths() if path.stem == "kiln-row").read_text(encoding="utf-8")
PLAYERS = {"north": 5, "south": 5}


def foreseen(text: str) -> Forecast:
    space = explore(net_in(game_in(text), PLAYERS))
    found = forecast(space, library.norms(), library.kit_names(), compare=False)
    assert found is not None
    return found


def lines(found: Forecast) -> str:
    return "\n".join(line for section in told(found) for line in section.lines)


def test_each_has_the_task_for_an_equal_share_of_the_time() -> None:
    said = lines(foreseen(KILNS))
    assert "is a baker, of the time                      20 %" in said
    assert "all have had a turn after                5.0 min" in said


def test_a_task_that_passes_on_leaves_the_odds_as_they_are() -> None:
    with_bakers, without = foreseen(KILNS), foreseen(KILNS.replace("  bakers change every 60 s\n", ""))
    assert with_bakers.game.wins == without.game.wins and not without.net.duties


FOXES = """
game Foxes
space
  court 18 m by 9 m, in one piece
  den queue: beside the court
sides
  foxes, 1 to 4 players
  hares, 4 to 20 players
play
  foxes touch hares
  foxes change every {every}
when
  a hare is touched: that player waits in the den queue
finish
  foxes win when hares have no players in
  after 3 min: hares win
"""


def test_those_who_chase_change_with_those_whom_they_chase() -> None:
    space = explore(net_in(game_in(FOXES.format(every="60 s")), {"foxes": 2, "hares": 6}))
    found = forecast(space, library.norms(), library.kit_names(), compare=False)
    assert found is not None
    said = lines(found)
    assert "is a fox, of the time                        25 %" in said
    assert "all have had a turn after                4.0 min" in said


@pytest.mark.parametrize(("every", "codes"), [("60 s", []), ("170 s", ["F-never-passed-on"]), ("round", [])])
def test_a_task_that_passes_on_after_most_rounds_is_told(every: str, codes: list[str]) -> None:
    found = foreseen(KILNS.replace("every 60 s", f"every {every}"))
    told_of = forecast_findings(found, library.norms())
    assert [each.code for each in told_of if each.code == "F-never-passed-on"] == codes


def test_a_third_of_all_rest_while_two_sides_play() -> None:
    shares = {each.name: each.share.value for each in foreseen(KILNS).standings}
    assert isclose(shares["resting"], 1 / 3) and isclose(sum(shares.values()), 1.0)
    alone = foreseen(KILNS.replace("  one side rests, the winner stays on, 6 rounds\n", ""))
    without = {each.name: each.share.value for each in alone.standings}
    assert isclose(shares["playing"], without["playing"] * 2 / 3)


@pytest.mark.parametrize(
    ("pupils", "on", "resting"), [(27, [9, 9], 9), (28, [10, 9], 9), (29, [10, 10], 9), (12, [4, 4], 4)]
)
def test_a_class_makes_three_groups_where_a_side_rests(pupils: int, on: list[int], resting: int) -> None:
    teams = teams_of(game_in(KILNS), pupils)
    assert [list(each.values()) for each in teams.games] == [on]
    assert (teams.resting, teams.over) == (resting, 0)


@pytest.mark.parametrize(("pupils", "on"), [(16, [4, 4, 4, 4]), (27, [7, 7, 7, 6]), (40, [10, 10, 10, 10])])
def test_four_groups_make_two_games_side_by_side(pupils: int, on: list[int]) -> None:
    line = "four sides on two courts, winners meet winners, 4 rounds"
    teams = teams_of(game_in(KILNS.replace("one side rests, the winner stays on, 6 rounds", line)), pupils)
    assert [number for each in teams.games for number in each.values()] == on
    assert (teams.resting, teams.over) == (0, 0)


STORE = next(path for path in library.game_paths() if path.stem == "winter-store").read_text(encoding="utf-8")


def over(text: str) -> Forecast:
    space = explore(net_in(game_in(text), {"squirrels": 4, "jays": 4}))
    found = forecast(space, library.norms(), library.kit_names(), compare=False)
    assert found is not None
    return found


def test_over_so_many_innings_equal_groups_win_alike_and_seldom_is_it_level() -> None:
    """With each more turn at either task the sum of the points spreads, so that fewer games end level."""
    text = STORE.replace("12 nuts", "4 nuts")
    two = over(text.replace("4 innings, the sides", "two halves, the sides")).game
    four, six = over(text).game, over(text.replace("4 innings", "6 innings")).game
    for game in (two, four, six):
        (_, one), (_, other) = game.wins
        assert isclose(one.value, other.value, rel_tol=1e-9)
    assert two.drawn.value > four.drawn.value > six.drawn.value
    assert [each.rounds for each in (two, four, six)] == pytest.approx([2, 4, 6])
    assert isclose(four.minutes, 2 * two.minutes)


def test_pairs_change_after_so_many_attempts() -> None:
    text = next(path for path in library.game_paths() if path.stem == "pebble-pairs").read_text(encoding="utf-8")
    space = explore(net_in(game_in(text), {"rollers": 1, "gatherers": 1}))
    found = forecast(space, library.norms(), library.kit_names(), compare=False)
    assert found is not None
    said = lines(found)
    assert "is a roller, of the time                     50 %" in said
    assert "all have had a turn after                10 attempts" in said

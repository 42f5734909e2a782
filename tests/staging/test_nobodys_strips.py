"""Which lines leave a place by both side lines, or in all corners, to nobody, and which make it a side's."""

from __future__ import annotations

import pytest
from floor_games import FOUR_MATS, game_of

from compose.staging.resolved import resolved

ALLEY = """
game Marmot Run
space
  court 14 m by 5 m, in one piece
  roller zone: 2 m deep, along each side line
sides
  marmots, 4 players
  rollers, 4 players
kit
  4 foam balls
set-up
  rollers in the roller zone
  {balls}
play
  rollers roll a foam ball at the marmots
  rollers stay in the roller zone
finish
  rollers win when marmots have no players in
"""


@pytest.mark.parametrize(("balls", "places"), [
    ("foam balls in the roller zone", 2),
    ("4 foam balls in the roller zone", 2),
    ("2 foam balls in each roller zone", 1),
    ("foam balls in the roller zone of rollers", 1),
])  # fmt: skip
def test_balls_that_lie_there_make_it_nobody_s_but_so_many_in_each(balls: str, places: int) -> None:
    """The rollers along both sides had one side line less once a line said where the balls lie."""
    areas = resolved(game_of(ALLEY.format(balls=balls))).play.areas
    assert {area.places for area in areas} == {places}


def test_things_that_each_side_has_make_it_a_side_s() -> None:
    text = FOUR_MATS.format(sides="north and south, 4 players each, mirrored", play="players run from wall to wall")
    text = text.replace("\nplay", "\nkit\n  5 pins for each side\nset-up\n  pins in the mat base\nplay", 1)
    assert {area.owner.key for area in resolved(game_of(text)).play.areas} == {"north", "south"}


@pytest.mark.parametrize(("runs", "number"), [
    ("hares run from wall to the mat base", 4),
    ("hares run from wall to their mat base", 1),
    ("players run from wall to the mat base", 1),
])  # fmt: skip
def test_one_side_alone_runs_to_any_of_them(runs: str, number: int) -> None:
    """Four mats of which only the hares speak are all theirs to run to; of both sides each runs to its own."""
    text = FOUR_MATS.format(sides="hares and foxes, 6 players each", play=runs)
    assert {area.places for area in resolved(game_of(text)).play.areas} == {number}

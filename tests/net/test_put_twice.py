"""A line of the set-up for things that another line has counted out is refused: it would do nothing."""

from __future__ import annotations

import pytest

from compose.staging.resolved import resolved
from tests.interpreter.sheets import game_in

SHEET = """
game Twice
space
  court 18 m by 9 m, halved across
sides
  herons and pikes, 5 to 10 players each
kit
  6 foam balls
  2 red balls, like a soft volleyball
  3 cones for each side
set-up
  cones on the back line of their side
  {foam}
  {red}
  {more}
play
  players roll a foam ball at the cones of the other side
  players roll a red ball at the cones of the other side
finish
  after 6 min: more cones standing wins, else a draw
"""
COUNTED = ("3 foam balls in each half", "1 red ball in each half")


@pytest.mark.parametrize("more", ["herons begins with the ball", "foam balls in the middle", "red balls in each half"])
def test_what_is_counted_out_is_not_put_again(more: str) -> None:
    with pytest.raises(AssertionError, match="None of these is left"):
        game_in(SHEET.format(foam=COUNTED[0], red=COUNTED[1], more=more))


@pytest.mark.parametrize(
    ("foam", "red", "more"),
    [
        ("2 foam balls in each half", COUNTED[1], "foam balls in the middle"),
        ("foam balls in each half", "1 red ball in the half of herons", "red balls in the half of pikes"),
        (COUNTED[0], "1 red ball in the half of herons", "herons begins with the ball"),
    ],
)
def test_what_is_left_is(foam: str, red: str, more: str) -> None:
    assert resolved(game_in(SHEET.format(foam=foam, red=red, more=more))).play.starts

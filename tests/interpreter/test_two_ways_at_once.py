"""Who wins in two ways at once has won; two sides that win at once are level where the sheet says so."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game At Once
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 6 players each, mirrored
kit
  2 soft balls, like a foam ball
  1 cone for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players roll a soft ball at the cones of the other side
when
  a cone is knocked: it stays down and {who} scores 1 point
finish
  a side wins when the other side has no cones standing
  the first side to 1 point wins
  both at once: a draw
"""


@pytest.mark.parametrize("who", ["the roller's side", "the other side"])
def test_both_readers_agree_who_wins(who: str) -> None:
    agree(game_in(GAME.format(who=who)), {"north": 2, "south": 2})

"""Who "that guard" is by what has happened: who caught it, who has the pass; both readers agree."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game That One
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
  far bench: behind each back line
sides
  north and south, 2 to 6 players each, mirrored
  role guard: 1 player of each side
kit
  1 soft ball, like a foam ball
set-up
  1 soft ball in the half of north
  {set_up}
play
  players roll a soft ball at the players of the other side
  players pass a soft ball to a team-mate on the far bench
when
  {when}
finish
  a side loses when it has no players in
"""
WAYS = {
    "who caught it": (
        "1 player of each side in the rest queue",
        "a ball is caught by a guard: that guard waits in the rest queue",
    ),
    "who has the pass": (
        "guards on the far bench",
        "a pass is caught on the far bench: that guard returns and the passer is out",
    ),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_mean_the_same(way: str) -> None:
    set_up, when = WAYS[way]
    agree(game_in(GAME.format(set_up=set_up, when=when)), {"north": 2, "south": 2})

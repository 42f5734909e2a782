"""Fouls: both readers let the same players foul, and the same follows."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Foul
space
  court 18 m by 9 m, {cut}
  rest bench: beside the court
sides
  north and south, 2 to 6 players each, mirrored
  role keeper: 1 player of each side
kit
  1 soft ball, like a foam ball
  1 cone for each side
set-up
  {start}
  cones on the back line of their side
play
  players overarm throw a soft ball at the cones of the other side
  whoever waits in the rest bench comes back after 60 s
when
  a cone is knocked: the thrower's side scores 1 point and it stands up again
  {when}
finish
  the first side to 2 points wins
"""
BENCH = "a player fouls: that player goes to the rest bench"
WAYS = {
    "a seat": ("halved across", "1 soft ball in the half of north", BENCH),
    "the ball": ("in one piece", "north begins with the ball", "a player fouls: the other side has the ball"),
    "a point": (
        "in one piece",
        "soft balls in the middle",
        "a keeper fouls: the other side scores 1 point\n  a player fouls: that player is out",
    ),
    "of one side": ("halved across", "1 soft ball in the half of north", "a player of north fouls: south wins"),
    "not while": (
        "in one piece",
        "north begins with the ball",
        "a player fouls while the other side has at least 1 point: that player goes to the rest bench",
    ),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_let_the_same_players_foul(way: str) -> None:
    cut, start, when = WAYS[way]
    agree(game_in(GAME.format(cut=cut, start=start, when=when)), {"north": 2, "south": 2})

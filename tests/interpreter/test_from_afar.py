"""What counts from so far or farther: both readers take it of the same attempts."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game From Afar
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
  role marksman: 1 player of each side, aims from 8 m
kit
  2 soft balls, like a foam ball
  2 cones for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  {play}
when
  a cone is knocked: it stands up again and the thrower's side scores 1 point
  {when}
finish
  the first side to 5 points wins
"""
NEAR = "players overarm throw a soft ball at the cones of the other side, from 6 m away"
FAR = "players overarm throw a soft ball at the cones of the other side, from 9 m away"
TWO = "a cone is knocked from 9 m away: the thrower's side scores 2 points"
WAYS = {
    "two lines": (f"{NEAR}\n  {FAR}", TWO),
    "the farther the more": (
        f"{NEAR}\n  {FAR}",
        f"{TWO}\n  a cone is knocked from 6.5 m away: the thrower's side scores 3 points",
    ),
    "a role": (
        "players overarm throw a soft ball at the cones of the other side",
        "a cone is knocked from 8 m away: the thrower's side scores 2 points",
    ),
    "a miss from afar": (f"{NEAR}\n  {FAR}", "a ball is missed from 9 m away: the thrower goes to the rest queue"),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_know_from_how_far(way: str) -> None:
    play, when = WAYS[way]
    agree(game_in(GAME.format(play=play, when=when)), {"north": 2, "south": 2})

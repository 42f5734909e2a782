"""Balls that go into what is open: both readers take it for no knock, and roll none over an edge."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Into
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
kit
  1 soft ball, like a foam ball
  1 pot for each side, like a {like}
set-up
  1 soft ball in the half of north
  pots on the back line of their side
play
  {play}
when
  {when}
finish
  the first side to 3 points wins
"""
SCORES = "the thrower's side scores"
WAYS = {
    "a box": ("box", "players overarm throw a soft ball into the pots", f"a ball goes into a pot: {SCORES} 1 point"),
    "over its edge": (
        "box",
        "players roll or kick a soft ball into the pots",
        f"a ball goes into a pot: {SCORES} 1 point",
    ),
    "a goal": ("small goal", "players roll a soft ball into the pots", f"a ball goes into a pot: {SCORES} 1 point"),
    "at it or into it": (
        "bucket",
        "players kick a soft ball into the pots or at the pots",
        f"a ball goes into a pot: {SCORES} 2 points\n  a pot is knocked: {SCORES} 1 point",
    ),
    "after a bounce": (
        "bucket",
        "players overarm throw a soft ball into the pots",
        f"a ball goes into a pot: {SCORES} 1 point\n  a ball goes into a pot after a bounce: {SCORES} 2 points",
    ),
    "worth": ("bucket", "players overarm throw a soft ball into the pots", "pots score 2 points"),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_know_what_goes_in(way: str) -> None:
    like, play, when = WAYS[way]
    agree(game_in(GAME.format(like=like, play=play, when=when)), {"north": 2, "south": 2})

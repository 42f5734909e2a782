"""Who waits until the next point: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 2, "south": 2}
POINTS = """
game Points
space
  court 18 m by 9 m, halved across
  foul queue: {lies}
  rest bench: behind each back line
sides
  north and south, 1 to 14 players each
kit
  1 foam ball
  1 ring for each side
set-up
  rings on the back line of their side
  1 foam ball in the half of north
play
  players overarm throw a foam ball through the ring of the other side
  players overarm throw a foam ball at the players of the other side
  {play}
when
  a ball goes through a ring: the thrower's side scores 1 point
  {when}
finish
  the first side to 3 points wins
"""
FOUL = "a player fouls: that player waits in the foul queue until the next point"
CASES = {
    "after a foul": ("beside each half", "", FOUL),
    "in one queue for all": ("beside the court", "", FOUL),
    "by a line of play": (
        "beside each half",
        "whoever waits in the foul queue comes back after the next point",
        "a player is hit: that player waits in the foul queue",
    ),
    "who goes with a point waits for another": (
        "beside each half",
        "",
        "a player is hit: the thrower's side scores 1 point and "
        "that player waits in the foul queue until the next point",
    ),
    "others wait on": (
        "beside each half",
        "the teacher frees the last on each rest bench",
        f"{FOUL}\n  a player is hit: that player goes to the rest bench",
    ),
    "frozen till then": (
        "beside each half",
        "whoever is frozen is free after the next point",
        "a player is hit: that player freezes",
    ),
    "a row that scores": ("beside each half", "", f"{FOUL}\n  2 shots in a row: that side scores 1 point"),
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    lies, play, when = CASES[case]
    game = game_in(POINTS.format(lies=lies, play=play, when=when))
    mine, its = read_by_both(game, PLAYERS)
    assert its.differs(mine) == ""

"""What follows only of what somebody does: both readers ask who touched, hit, knocked or caught."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

HEAD = """
game By Whom
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
  role guard: 1 player of each side
kit
  1 soft ball, like a foam ball
  1 wool ball, like a yarn ball
  1 cone for each side
set-up
  1 soft ball in the half of north
  1 wool ball in the half of south
  cones on the back line of their side
play
  {play}
when
  {when}
finish
  {finish}
"""
AIMED = "players overarm throw a ball at the cones or the players of the other side"
PASS = "players pass a soft ball to a team-mate"
UP = "a cone is knocked: it stands up again"
AWAY = "that player waits in the rest queue"
WAYS = {
    "a role knocks": (AIMED, f"{UP}\n  a cone is knocked by a guard: the thrower's side scores 1 point"),
    "its own side": (AIMED, f"{UP}\n  a cone is knocked by its own side: it stays down"),
    "a side that is named": (
        AIMED,
        f"a cone is knocked by a player of north: it stays down\n  a player is hit by south: {AWAY}",
    ),
    "by which ball": (AIMED, f"{UP}\n  a player is hit by a wool ball: {AWAY}\n  a player is hit: play goes on"),
    "by which skill": (
        "players roll or underarm throw a soft ball at the players of the other side",
        f"a player is hit by a roll: {AWAY}",
    ),
    "a role catches": (
        AIMED,
        f"{UP}\n  a ball is caught by a guard: the thrower waits in the rest queue\n"
        "  a ball is caught: the first in the catcher's rest queue returns",
    ),
    "who caught goes": (
        "players roll a soft ball at the cones of the other side",
        f"{UP}\n  a ball is caught by a guard: the guard waits in the rest queue",
    ),
    "a pass of the others": (PASS, "a pass is caught by the other side: the thrower waits in the rest queue"),
    "a pass of a guard": (PASS, "a pass is intercepted by a guard: the thrower waits in the rest queue"),
    "a pass of a mate": (PASS, "a pass is caught by a team-mate: the thrower's side scores 1 point"),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_know_by_whom(way: str) -> None:
    play, when = WAYS[way]
    finish = "the first side to 2 points wins" if "point" in when else "after 5 min: more players in wins, else a draw"
    agree(game_in(HEAD.format(play=play, when=when, finish=finish)), {"north": 2, "south": 2})


CHASE = """
game Two Sorts of Takers
space
  court 14 m by 14 m, in one piece
  far bench: behind each back line
  den zone: 2 m deep, across the middle
sides
  north and south, 2 to 6 players each, mirrored
  role stallkeeper: 1 player of each side
  gulls, 1 to 3 players
kit
  1 log for each side, like a cone
set-up
  logs in the corner of their side
play
  players of north take a log from the corner of south to their corner
  stallkeepers of south touch players of north who carry a log
  gulls touch players of north
when
  a player is touched by a gull: that player goes to the far bench and the gull joins the far bench
  a player who carries a log is touched by a stallkeeper: the log goes to the den zone
finish
  a side wins when it has 2 logs in its corner
"""


def test_both_readers_know_who_touched() -> None:
    agree(game_in(CHASE), {"north": 2, "south": 2, "gulls": 1})


FERRY = """
game Who Stands There
space
  court 20 m by 12 m, in one piece
  ferry bench: behind each back line
sides
  north and south, 2 to 6 players each, mirrored
  role keeper: 1 player of each side
kit
  1 foam ball
set-up
  1 keeper of each side on the ferry bench
  north begins with the ball
play
  players pass a foam ball to a team-mate on the ferry bench
when
  a pass is caught on the ferry bench: the passer changes places with the keeper and the ball goes to the other side
  a ball is missed: the passer's side scores 1 point and the ball goes to the other side
finish
  the first side to 2 points wins
"""


def test_who_stands_there_is_the_one_of_that_task_and_hands_it_on() -> None:
    agree(game_in(FERRY), {"north": 3, "south": 3})

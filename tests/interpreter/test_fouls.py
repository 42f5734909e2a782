"""Fouls: both readers let the same players foul, and the same follows."""

from __future__ import annotations

import pytest

from compose.net.told import FouledSo
from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

GAME = """
game Foul
space
  court 18 m by 9 m, {cut}
  rest bench: beside the court
  sin queue: beside each half
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
    "a seat for a time": (
        "halved across",
        "1 soft ball in the half of north",
        "a player fouls: that player waits in the sin queue for 30 s",
    ),
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
    game = game_in(GAME.format(cut=cut, start=start, when=when))
    agree(game, {"north": 2, "south": 2})
    moves = net_in(game, {"north": 2, "south": 2}).transitions
    assert all(move.part > 0 for move in moves)
    fouls = [move for move in moves if isinstance(move.told, FouledSo)]
    assert fouls and not any(move.forced for move in fouls), "nobody has to"


SEVERAL = """
game Foul of Several
space
  court 18 m by 9 m, {cut}
  rest bench: beside the court
sides
  {sides}, 2 to 6 players each, mirrored
kit
  {balls} soft balls, like a foam ball
set-up
  {start}
play
  players pass a soft ball to a team-mate
  {play}
when
  {when}
finish
  the first side to 2 points wins
"""
TWO_BALLS = {
    "cut": "in one piece", "sides": "north and south", "balls": 2, "start": "each side begins with 1 soft ball",
    "play": "players roll a soft ball past the back line of the other side, only 1 player at a time",
}  # fmt: skip
LINE = "a ball crosses the back line: the roller's side scores 1 point"
MANY = {
    "one of theirs": {"when": f"{LINE}\n  a player fouls: a soft ball goes to the other side"},
    "the ball": {"when": f"{LINE}\n  a player of north fouls: the other side has the ball"},
    "in halves": {
        "cut": "halved across",
        "start": "1 soft ball in each half",
        "when": f"{LINE}\n  a player fouls: a soft ball goes to the other side",
    },
    "after a row": {"when": f"{LINE}\n  2 passes in a row: the ball goes to the other side"},
    "three sides": {
        "cut": "in equal parts",
        "sides": "north, south and west",
        "balls": 3,
        "start": "1 soft ball in each half",
        "play": "",
        "when": "a player fouls: a soft ball goes to the other side and the other side scores 1 point",
    },
    "of three": {
        "cut": "in equal parts",
        "sides": "north, south and west",
        "balls": 3,
        "start": "1 soft ball in each half",
        "play": "",
        "when": "a player fouls: that player goes to the rest bench and each other side scores 1 point\n"
        "  a player of north fouls while the other side has 1 point: the other side scores 1 point",
    },
    "of three all who wait": {
        "cut": "in equal parts",
        "sides": "north, south and west",
        "balls": 3,
        "start": "1 soft ball in each half",
        "play": "",
        "when": "a player fouls: all on the rest bench of each other side return and the other side scores 1 point",
    },
    "of three the first who waits": {
        "cut": "in equal parts",
        "sides": "north, south and west",
        "balls": 3,
        "start": "1 soft ball in each half",
        "play": "",
        "when": "a player fouls: the first on the rest bench of each other side returns\n"
        "  a ball is missed: the thrower goes to the rest bench and each other side scores 1 point",
    },
}


@pytest.mark.parametrize("way", MANY)
def test_both_readers_give_one_of_several_balls_to_the_same_side(way: str) -> None:
    lines = [line for line in SEVERAL.format(**{**TWO_BALLS, **MANY[way]}).splitlines() if line.strip()]
    game = game_in("\n".join(lines) + "\n")
    agree(game, dict.fromkeys((side.name for side in game.sides), 1 if len(game.sides) > 2 else 2))

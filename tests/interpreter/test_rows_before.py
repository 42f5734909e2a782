"""What may be tried only after so many successes in a row: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 3, "south": 2}
ROWS = """
game Rows
space
  court 18 m by 9 m, {cut}
  far bench: behind each back line
sides
  north and south, 1 to 14 players each
kit
  1 foam ball
  1 ring for each side
set-up
  rings on the back line of their side
  {start}
play
  players pass a foam ball to a team-mate
  {play}
when
  a ball goes through a ring: the thrower's side scores 1 point
  {when}
finish
  the first side to 2 points wins
"""
USUAL = {
    "cut": "halved across",
    "start": "1 foam ball in the half of north",
    "play": "players overarm throw a foam ball through the ring of the other side, only after 2 passes in a row",
    "when": "",
}
HELD = {"cut": "in one piece", "start": "north begins with the ball"}
CASES = {
    "a shot after two passes": {},
    "intercepted": {"when": "a pass is intercepted: the ball goes to the catcher's half"},
    "the ball is somebody's": HELD | {"when": "a pass is intercepted: the catcher's side has the ball"},
    "held too long": HELD | {"when": "a ball is held longer than 10 s: the other side has the ball"},
    "held too long, and all balls go": {
        "when": "a ball is held longer than 10 s: all balls go to the half of the other side"
    },
    "a foul": HELD | {"when": "a player fouls: the other side has the ball"},
    "another shot begins anew": {"play": USUAL["play"] + "\n  players kick a foam ball past the back line"},
    "the pass that scores is one of them": {
        "start": "1 foam ball in the half of north\n  1 player of each side on the far bench",
        "play": "players pass a foam ball to a team-mate on the far bench, only after 1 pass in a row",
        "when": "a pass is caught on the far bench: the passer's side scores 1 point",
    },
    "both a row that scores and one before a shot": {"when": "2 passes in a row: the passer's side scores 1 point"},
    "one row in two lines": HELD
    | {
        "when": "2 passes in a row: the passer's side scores 1 point\n"
        "  2 passes in a row: the ball goes to the other side"
    },
    "besides another condition": {"play": USUAL["play"] + ", only when it has at least 2 players in"},
    "everything starts again": {"when": "a ball is missed: everything starts again"},
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    game = game_in(ROWS.format(**(USUAL | CASES[case])))
    mine, its = read_by_both(game, PLAYERS)
    assert its.differs(mine) == ""
    assert any("asked" in key for state in its.results for key, _ in state)

"""Who has the ball: both readers give it to the same side, on a court in one piece and on one in halves."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Whose Ball
space
  court 18 m by 9 m, {cut}
  rest queue: beside the court
sides
  {sides}, 2 to 6 players each, mirrored
kit
  {balls}, like a foam ball
  1 cone for each side
set-up
  {start}
  cones on the back line of their side
play
  players overarm throw a soft ball at the cones of the other side
  {pass_line}{caught}
  {play}
when
  a cone is knocked: {knocked}
  {when}
finish
  a side wins when it has at least 3 points
"""
USUAL = {
    "cut": "in one piece",
    "sides": "north and south",
    "balls": "2 soft balls",
    "start": "north begins with the soft balls",
    "pass_line": "players pass a soft ball to a team-mate",
    "caught": "",
    "play": "",
    "knocked": "it stands up again and the thrower's side scores 1 point and the ball goes to the other side",
    "when": "",
}
WAYS = {
    "as granted": {},
    "in halves": {"cut": "halved across"},
    "intercepted": {"caught": ", 1 in 5 are intercepted"},
    "a missed pass": {"play": "a missed pass goes to the other side"},
    "stays with the thrower": {"play": "a missed ball stays with the thrower's side"},
    "catcher": {"play": "a caught ball goes to the catcher", "caught": ", 1 in 5 are caught"},
    "whoever catches": {"play": "whoever catches a ball has it"},
    "whoever is first": {"play": "whoever is first at a loose ball has it"},
    "loose": {"play": "whoever is first at a loose ball has it\n  a missed ball goes to the other side"},
    "loose last": {"play": "a missed pass goes to the other side\n  whoever is first at a loose ball has it"},
    "loose behind": {
        "play": "whoever is first at a loose ball has it\n  a missed ball rests behind the back line of the other side"
    },
    "touched with it": {
        "balls": "1 soft ball", "start": "north begins with the soft ball",
        "play": "players touch players of the other side who carry a soft ball",
        "when": "a player is touched: the tagger's side scores 1 point",
    },
    "touched with or without it": {
        "balls": "1 soft ball", "start": "north begins with the soft ball",
        "play": "players touch players of the other side\n  south touch players of north who carry a soft ball",
        "when": "a player is touched: the ball goes to the other side",
    },
    "a rule": {"when": "a pass is intercepted: the catcher scores 1 point and the thrower's side has the ball"},
    "a ball": {"when": "a ball is intercepted: the other side has the ball\n  a ball is caught: the catcher is out"},
    "from the middle": {"start": "soft balls in the middle", "when": "a ball is missed: the ball goes to south"},
    "each": {"start": "each side begins with 1 soft ball", "play": "nobody fetches balls from the court"},
    "a count": {"when": "a side has no soft balls: it loses 1 point and all soft balls go to that side"},
    "held": {"when": "a soft ball is held longer than 10 s: the other side has the ball"},
    "a row": {
        "balls": "1 soft ball",
        "when": "3 passes in a row: the passer's side scores 1 point and the ball goes to the other side",
    },
    "a row of several balls": {"when": "3 passes in a row: all soft balls go to the other side"},
    "three": {
        "sides": "north, south and west",
        "pass_line": "",
        "play": "a missed throw goes to the other side",
        "balls": "3 soft balls",
    },
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_give_the_ball_to_the_same_side(way: str) -> None:
    lines = [line for line in GAME.format(**{**USUAL, **WAYS[way]}).splitlines() if line.strip()]
    game = game_in("\n".join(lines) + "\n")
    agree(game, dict.fromkeys((side.name for side in game.sides), 2))

"""A ball that is carried on or passed: both readers chase whoever has it, and let the same follow."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Carried On
space
  court 18 m by 9 m, in one piece
  far base: behind each back line
  rest queue: beside the court
sides
  north and south, 2 to 6 players each, mirrored
  {roles}
kit
  {balls}, like a foam ball
set-up
  {start}
play
  players carry a soft ball to the far base of the other side{some}
  {play}
  players touch players of the other side who carry a soft ball
  {more}
when
  {touched}
  a soft ball arrives: {arrives}
finish
  the first side to 2 points wins
"""
USUAL = {
    "roles": "",
    "some": "",
    "balls": "1 soft ball",
    "start": "north begins with the soft ball",
    "play": "players pass a soft ball to a team-mate, 1 in 5 are intercepted",
    "more": "",
    "touched": "a player who carries a soft ball is touched: the ball goes to the other side",
    "arrives": "the carrier's side scores 1 point",
}
WAYS = {
    "as granted": {},
    "a ball of one's own": {"balls": "2 soft balls", "start": "each side begins with 1 soft ball"},
    "waits": {
        "touched": "a player is touched: that player waits in the rest queue",
        "more": "whoever waits in the rest queue comes back after 20 s",
    },
    "stays with them": {
        "touched": "a player who carries a ball is touched: that player waits in the rest queue",
        "arrives": "the carrier's side scores 1 point and the ball stays with the carrier",
    },
    "narrower": {
        "touched": "a player of north who carries a ball is touched: the ball goes to the other side\n"
        "  a player is touched: play goes on",
    },
    "scored": {"more": "a scored ball stays with the thrower's side"},
    "some get through": {"some": ", 1 in 2 succeed"},
    "loose": {"touched": "a player is touched: the ball goes to the court"},
    "a row": {
        "play": "players pass a soft ball to a team-mate",
        "more": "players underarm throw a soft ball past the back line of the other side, only after 2 passes in a row",
    },
    "a role": {
        "roles": "role tagger: 1 player of each side",
        "more": "taggers touch players of the other side who carry a ball",
    },
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_carry_the_same_balls_on(way: str) -> None:
    lines = [line for line in GAME.format(**{**USUAL, **WAYS[way]}).splitlines() if line.strip()]
    game = game_in("\n".join(lines) + "\n")
    agree(game, dict.fromkeys((side.name for side in game.sides), 2))

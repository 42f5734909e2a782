"""A ball that goes to those with a task: both readers let nobody else have it, and count it as their side's."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Handed Over
space
  court 18 m by 9 m, {cut}
  far base: behind each back line
sides
  north and south, 2 to 6 players each, mirrored
  {role}
kit
  {balls}, like a foam ball
  1 pail for each side, like a bucket
set-up
  {start}
  pails on the back line of their side
play
  players underarm throw a soft ball into the pails of the other side
  {theirs}
  {play}
when
  a ball goes into a pail: {scored}
  {when}
finish
  the first side to 2 points wins
"""
USUAL = {
    "cut": "in one piece",
    "role": "role keeper: 1 player of each side",
    "balls": "1 soft ball",
    "start": "north begins with the soft ball",
    "theirs": "keepers pass a soft ball to a team-mate",
    "play": "",
    "scored": "the thrower's side scores 1 point and the ball goes to the keeper",
    "when": "",
}
WAYS = {
    "who let it in": {},
    "a miss": {"play": "a missed throw goes to the keeper of the other side"},
    "a named one": {"when": "a ball is missed: the ball goes to the keeper of north"},
    "back to them": {
        "when": "a ball is missed: the ball goes to the keeper of the other side",
        "play": "a missed pass stays with the thrower's side",
    },
    "in halves": {"cut": "halved across", "start": "1 soft ball in the half of north"},
    "of one side": {
        "role": "role captain: 1 player of south",
        "theirs": "captains roll a soft ball into the pails of the other side",
        "scored": "the thrower's side scores 1 point and the ball goes to the captain",
    },
    "counted": {"when": "a side has no soft balls: it loses 1 point"},
    "several balls": {"balls": "2 soft balls", "start": "each side begins with 1 soft ball"},
    "carried and touched": {
        "theirs": "keepers carry a soft ball to the far base of the other side",
        "play": "players touch players of the other side who carry a soft ball",
        "when": "a player is touched: the ball goes to the other side",
    },
    "held": {"when": "a soft ball is held longer than 10 s: the other side has the ball"},
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_hand_it_to_the_same_players(way: str) -> None:
    lines = [line for line in GAME.format(**{**USUAL, **WAYS[way]}).splitlines() if line.strip()]
    agree(game_in("\n".join(lines) + "\n"), {"north": 2, "south": 2})

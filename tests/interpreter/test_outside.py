"""Those who wait somewhere send balls from there: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 2, "south": 2}
SHADOWS = """
game Shadows
space
  court 18 m by 9 m, {court}
  shadow zone: {where}
sides
  north and south, 2 to 14 players each, mirrored
  {role}
kit
  2 foam balls
  1 cone for each side
set-up
  {set_up}
  cone on the back line of their side
play
  players overarm throw a foam ball at the players of the other side
  {outside}
  players fetch balls from the shadow zone
when
  a player is hit: that player goes to the shadow zone of the other side
  {when}
finish
  a side loses when it has no players in
"""
USUAL = {
    "court": "halved across",
    "where": "2 m deep, behind each back line",
    "role": "role scout: 0 to 1 players of each side",
    "set_up": "1 foam ball in each half",
    "outside": "players in the shadow zone of the other side kick a foam ball at the players of the other side",
    "when": "a player is hit from the shadow zone of the other side: the thrower returns",
}
BENCH = {
    "where": "beside the court",
    "set_up": "foam balls in the shadow zone",
    "outside": "players in the shadow zone roll a foam ball at the players of the other side",
    "when": "a player is hit from the shadow zone: the thrower returns",
}
CASES = {
    "behind the line": {},
    "before the line": {"where": "2 m deep, before each back line"},
    "any of the name": {"outside": "players in the shadow zone kick a foam ball at the players of the other side"},
    "in one piece": {"court": "in one piece", "set_up": "foam balls in the middle"},
    "nobody comes back": {"when": "a cone is knocked: it stays down"},
    "narrower": {
        "when": "a player is hit from the shadow zone: that player is out and the thrower returns\n"
        "  a player is hit while a side has 1 player in: play goes on"
    },
    "a role": {
        "role": "role scout: 1 player of each side",
        "outside": "scouts in the shadow zone of the other side roll a foam ball at the players of the other side\n"
        "  scouts roll a foam ball at the cones of the other side",
    },
    "a pass": {
        "outside": "players in the shadow zone of the other side pass a foam ball to a team-mate",
        "when": "a pass is caught from the shadow zone of the other side: the passer returns\n"
        "  a ball is caught: the first in the thrower's shadow zone returns",
    },
    "to who waits": {
        "outside": "players in the shadow zone of the other side pass a foam ball to a team-mate "
        "in the shadow zone of the other side",
        "when": "a cone is knocked: it stays down",
        "set_up": "1 foam ball in each shadow zone",
    },
    "at a thing": {
        "outside": "players in the shadow zone of the other side roll a foam ball at the cones of the other side",
        "when": "a cone is knocked from the shadow zone of the other side: the thrower returns and it stands up again",
    },
    "a miss": {"when": "a ball is missed from the shadow zone: the ball goes to the shadow zone of the other side"},
    "past a line": {
        "outside": "players in the shadow zone of the other side roll a foam ball past the middle line",
        "when": "a ball crosses the middle line from the shadow zone of the other side: the thrower returns",
    },
    "a mate frees": {
        "outside": "players free the first in the shadow zone of the other side",
        "when": "a ball is caught: all in the thrower's shadow zone return",
    },
    "the teacher frees": {
        "outside": "the teacher frees the first in each shadow zone",
        "when": "a ball is missed: the first in the shadow zone of the other side returns",
    },
    "they come back": {
        "outside": "whoever waits in the shadow zone comes back after 20 s",
        "when": "a cone is knocked: it stays down",
    },
    "they come back from over there": {
        "outside": "whoever waits in the shadow zone of the other side comes back after 20 s",
        "when": "a cone is knocked: it stays down",
    },
    "nobody waits at home": {
        "outside": "whoever waits in their shadow zone comes back after 20 s",
        "when": "a cone is knocked: it stays down",
    },
    "a bench for all": {
        **BENCH,
        "when": f"{BENCH['when']}\n  a player is hit from the shadow zone while a side has 1 player in: play goes on",
    },
}


@pytest.mark.parametrize("name", CASES)
def test_both_readers_come_to_the_same(name: str) -> None:
    text = SHADOWS.format(**USUAL | CASES[name])
    if name == "a bench for all":
        text = text.replace("zone of the other side", "zone")
    game = game_in(text)
    mine, its = read_by_both(game, PLAYERS)
    assert not its.differs(mine)
    assert len(its.results) >= 20

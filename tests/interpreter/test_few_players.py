"""As few players as can be: of two who play each for themselves one can still catch the other's ball, and none wait
where all but all of them do."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

ALONE = """
game Alone
space
  court 18 m by 9 m
sides
  larks, 2 to 12 players, each for themselves
kit
  1 soft ball, like a foam ball
set-up
  soft ball in the middle
play
  players underarm throw a soft ball at the players
when
  a player is hit: that player is out
  a ball is caught: the thrower's side wins
finish
  a side wins when it has 1 player in
"""
WAITING = """
game Waiting
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, {least} to 6 players each, mirrored
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
  {start} of each side in the rest queue
play
  players underarm throw a soft ball at the players of the other side
  the teacher frees the first in each queue
when
  a player is hit: that player waits in the rest queue
finish
  a side wins when the other side has no players in
"""


@pytest.mark.parametrize("aim", ["the players", "the players or the pin"])
def test_two_who_play_each_for_themselves_catch_each_others_balls(aim: str) -> None:
    text = ALONE.replace("at the players", f"at {aim}")
    if "pin" in aim:
        text = text.replace("kit\n", "kit\n  1 pin\n").replace("set-up\n", "set-up\n  pin in the middle\n")
    agree(game_in(text), {"larks": 2})


@pytest.mark.parametrize(("start", "waiting"), [("all but 2 players", 0), ("all but 1 player", 1), ("1 player", 1)])
def test_who_starts_in_a_queue(start: str, waiting: int) -> None:
    game = game_in(WAITING.format(least=2, start=start))
    net = net_in(game, {"north": 2, "south": 2})
    queues = [place for place in net.places if "queue" in place.name]
    assert [place.start for place in queues] == [waiting, waiting]
    if waiting:
        agree(game, {"north": 2, "south": 2})

"""Sides that chase one another, and change sides: the second reader and the net agree."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, net_in

PLAYERS = {"red": 1, "yellow": 3, "blue": 2}
CHASE = """
game Chase
space
  court 18 m by 9 m, in one piece
  far bench: behind each back line
  {space}
sides
  red, yellow and blue, 1 to 14 players each, mirrored
play
  {play}
when
  {when}
finish
  {finish}
"""
USUAL = {
    "space": "reed zone: 1 m deep, before each back line",
    "play": "red touch yellow\n  yellow touch blue\n  blue touch red",
    "when": "a player is touched: that player goes to the far bench of the other side",
    "finish": "a side wins when the other side has no players in",
}
CASES = {
    "each sits on the bench of who touched": {},
    "freed from there": {"play": USUAL["play"] + "\n  players free the first on the far bench of the other side"},
    "freed by two": {
        "play": "red touch yellow\n  2 yellow players free the first on the far bench of red",
        "finish": "the round ends when yellow has at most 1 player in, nobody wins",
    },
    "safe from some, who stay there": {
        "space": "reed zone: 1 m deep, before each back line, no red players there, nobody guards there",
        "play": USUAL["play"] + "\n  yellow players stay in their reed zone",
        "finish": "the round ends when blue has no players in, nobody wins",
    },
    "on their own bench": {"when": "a player is touched: that player goes to the far bench"},
    "becomes one of theirs": {
        "when": "a player of red is touched: that player becomes a blue player\n"
        "  a player of yellow is touched: that player becomes a red player",
        "finish": "the round ends when red has no players in, nobody wins",
    },
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    game = game_in(CHASE.format(**(USUAL | CASES[case])))
    mine, its = read_by_both(game, PLAYERS)
    assert not its.differs(mine)
    assert len(its.results) > 2


ALONE = """
game Alone
space
  court 18 m by 9 m, in one piece
  rest queue: beside the court
sides
  hares, 3 to 20 players, each for themselves
play
  hares touch other hares
  whoever waits in the rest queue comes back after 10 s
when
  a hare is touched: the tagger's side scores 1 point and that player waits in the rest queue
finish
  after 3 min: the player with the most points wins
"""


def test_each_for_themselves_those_with_the_most_points_win() -> None:
    game = game_in(ALONE)
    mine, its = read_by_both(game, {"hares": 3})
    assert not its.differs(mine)
    bell = net_in(game, {"hares": 3}).bell
    assert bell is not None and [each.winner for each in bell.results] == ["hares"]

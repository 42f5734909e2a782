"""All players without a side are those of the one to which it happens, and a note says so."""

from __future__ import annotations

import pytest

from compose.net.lower.one_side_alone import of_one_side_alone
from compose.staging.resolved import resolved
from tests.interpreter.sheets import game_in

SHEET = """
game All or One
space
  court 18 m by 9 m, halved across
  reed queue: beside each half
sides
  {sides}
kit
  4 foam balls
set-up
  2 foam balls in each half
play
  players stay in their half
  players roll a foam ball at the players of the other side
when
  {when}
finish
  after 6 min: more players in wins, else a draw
"""
TWO = "north and south, 4 to 9 players each, mirrored"


def told(when: str) -> list[str]:
    return [finding.code for finding in of_one_side_alone(resolved(game_in(SHEET.format(sides=TWO, when=when))))]


@pytest.mark.parametrize(
    "when",
    [
        "a ball is caught: all players freeze",
        "a player is hit: all players wait in the reed queue",
        "a ball is caught: all players change places with all in the reed queue",
    ],
)
def test_all_players_of_whom_the_line_does_not_say_are_told_once(when: str) -> None:
    assert told(when) == ["N-one-side"]


@pytest.mark.parametrize(
    "when",
    [
        "a ball is caught: all players of that side freeze",
        "a ball is caught: all players of each side freeze",
        "a ball is caught: all players of the other side freeze",
        "a player is hit: that player freezes",
        "every 2 min: all players freeze",
        "everyone holds a ball for 5 s: all players change places with all in the reed queue",
    ],
)
def test_whose_they_are_is_clear_elsewhere(when: str) -> None:
    assert told(when) == []

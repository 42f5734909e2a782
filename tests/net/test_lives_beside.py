"""Of a life and of where somebody goes two lines both hold; that they play on, a wider line may say beforehand."""

from __future__ import annotations

import pytest

from compose.net.from_game import net_of
from tests.interpreter.sheets import game_in, granted

SHEET = """\
game Two Lives
space
  court 18 m by 9 m, halved across
sides
  north and south, 3 to 14 players each, mirrored
  role captain: 1 player of each side
  each captain has 2 lives
kit
  6 foam balls
set-up
  3 foam balls in each half
play
  players stay in their half
  players underarm throw a foam ball at the players of the other side
when
  a captain is hit: that player loses a life
  a player is hit: {what}
finish
  a side wins when the other side has all captains out
"""


@pytest.mark.parametrize(("what", "told"), [("that player is out", True), ("play goes on", False)])
def test_that_both_hold_is_told_where_the_wider_line_sends_them_away(what: str, told: bool) -> None:
    found = net_of(game_in(SHEET.format(what=what)), granted(), {"north": 3, "south": 3}).findings
    assert ("N-both" in {each.code for each in found}) is told

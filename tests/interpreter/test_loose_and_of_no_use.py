"""A loose ball whoever can do nothing with it leaves to those who can, unless a line of the sheet says who is first."""

from __future__ import annotations

import pytest

from compose.check import check
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, net_in

GAME = """
game Thaw
space
  court 16 m by 12 m, in one piece
sides
  foxes, 2 to 6 players
  hares, 2 to 6 players
kit
  1 foam ball
set-up
  hares begins with the ball
play
  foxes touch hares
  hares pass a foam ball to a frozen team-mate
  {play}
when
  a hare is touched: that player freezes
  a pass is caught by a frozen player: that player is free
finish
  foxes wins when hares has no players in
  after 4 min: hares wins
"""
WAYS = {
    "only hares use it": ("", False),
    "whoever is first": ("whoever is first at a loose ball has it", True),
    "foxes throw it, too": ("foxes overarm throw a foam ball at the hares", False),
}


@pytest.mark.parametrize(("play", "stranded"), WAYS.values(), ids=WAYS)
def test_both_readers_say_who_takes_it_up(play: str, stranded: bool) -> None:
    game = game_in(GAME.format(play=play))
    players = {"foxes": 2, "hares": 2}
    ours, theirs = read_by_both(game, players)
    assert ours == theirs
    assert ("C-stranded" in {each.code for each in check(net_in(game, players)).findings}) == stranded

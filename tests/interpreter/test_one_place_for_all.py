"""A place that lies once, of all or of one side: both readers send everybody there and bring things there alike."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Cave Raid
space
  court 18 m by 9 m, {cut}
  prison bench: {bench}
  cave base: {cave}
sides
  herd and wolves, 4 to 6 players each
kit
  2 nuts, like a cone
  2 soft balls, like a foam ball
set-up
  nuts on the cave base
  {balls}
play
  herd overarm throw a soft ball at the players of wolves
  {play}
when
  a player is hit: that player waits on the prison bench
  a ball is caught: the first on the prison bench returns
finish
  wolves win when herd has no players in
  herd wins when there are no nuts on the cave base
  after 5 min: nobody wins
"""
HERD_TAKES = "herd take a nut from the cave base to the prison bench"
SHEETS = {
    "a side wall, a corner": ("in one piece", "along a side line", "in a corner", HERD_TAKES),
    "an end, one side's": ("in one piece", "behind a back line", "on the back line of wolves", HERD_TAKES),
    "in halves": ("halved across", "along a side line", "before a back line", "players stay in their half"),
    "nobody follows": ("halved across", "along a side line", "before a back line, nobody enters there", ""),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_mean_the_same_place(sheet: str) -> None:
    cut, bench, cave, play = SHEETS[sheet]
    balls = "1 soft ball in each half" if cut == "halved across" else "soft balls in the middle"
    text = GAME.format(cut=cut, bench=bench, cave=cave, play=play, balls=balls)
    if "take" not in play:
        lines = [line for line in text.splitlines() if "nut" not in line]
        text = "\n".join(lines)
    game = game_in("\n".join(line for line in text.splitlines() if line.strip()))
    agree(game, {"herd": 3, "wolves": 3})


ALLEY = """
game Marmot Alley
space
  court 18 m by 9 m, in one piece
  roll strip: 1 m deep, along each side line
  mat base: 1 m deep, in each corner
  wait queue: behind the back line of marmots
sides
  rollers and marmots, 2 to 6 players each
kit
  3 foam balls
set-up
  {balls}
play
  rollers stay in the roll strip
  rollers roll a foam ball at the marmots
  marmots run from the wait queue to the mat base
  whoever waits in the wait queue comes back after 10 s
when
  a marmot is hit: that player waits in the wait queue
  a marmot arrives: the marmot's side scores 1 point
finish
  the first side to 3 points wins
  after 5 min: nobody wins
"""


@pytest.mark.parametrize("balls", ["foam balls in the roll strip", "3 foam balls in the roll strip"])
def test_both_readers_play_from_both_side_lines_to_any_corner(balls: str) -> None:
    """What one side alone speaks of lies along both lines and in all corners, and changes no count."""
    agree(game_in(ALLEY.format(balls=balls).strip()), {"rollers": 2, "marmots": 2})

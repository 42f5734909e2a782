"""Points are counted so far and no further: that a lead can never come there is nothing that was proved."""

from __future__ import annotations

import pytest

from compose.check import check
from tests.interpreter.sheets import game_in, net_in

GAME = """
game Past The Line
space
  court 18 m by 9 m, halved across
sides
  ruby and opal, 2 to 14 players each, mirrored
kit
  2 foam balls
set-up
  1 foam ball in each half
play
  players stay in their half
  players roll a foam ball past the back line of the other side
  players fetch balls from behind their back line
  a ball is held at most 6 s
when
  a ball crosses the back line: {scores}
finish
  {won}
  after 5 min: a draw
"""
LEAD = "a side wins when it has at least 3 more points than the other side"


@pytest.mark.parametrize(
    ("scores", "won", "codes"),
    [
        ("the roller's side scores 1 point", LEAD, set()),
        ("each side scores 1 point", LEAD, {"C-unwinnable"}),
        ("the roller's side scores 1 point", "the first side to 3 points wins", set()),
    ],
)
def test_a_lead_may_come_however_high_the_score(scores: str, won: str, codes: set[str]) -> None:
    net = net_in(game_in(GAME.format(scores=scores, won=won)), {"ruby": 2, "opal": 2})
    assert {each.code for each in check(net).findings} == codes

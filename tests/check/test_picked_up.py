"""Nobody holds what lies somewhere to be carried: a hold limit makes nobody pick it up, and is not advised."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Seven Coins
space
  court 16 m by 9 m, in one piece
sides
  magpies and jackdaws, 3 to 12 players each, mirrored
kit
  4 coins, like a beanbag
set-up
  coins in the middle
play
  players carry a coin from the middle to their back line
  {hold}
when
  a coin arrives: the carrier's side scores 1 point
finish
  the first side to 3 points wins
"""


@pytest.mark.parametrize("hold", ["players stay on the court", "a coin is held at most 10 s"])
def test_a_hold_limit_makes_nobody_pick_up_what_lies_there(hold: str) -> None:
    net = net_in(game_in(SHEET.format(hold=hold)))
    [stall] = [each for each in findings_told(check(net).findings, net) if each.code == "C-stall"]
    assert "is held at most" not in stall.hint and "Add a clock" in stall.hint
    assert any("a magpie carries" in step.words for step in stall.witness)

"""Balls that a side has in its half and does nothing with: what is advised can be written, and mends it."""

from __future__ import annotations

import re

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Own Colours
space
  court 18 m by 9 m, halved across
sides
  north and south, 3 players each
kit
  2 red balls, like a foam ball
  2 blue balls, like a foam ball
  2 pins for each side, like a plastic pin
set-up
  pins on the back line of their side, evenly spaced
  2 red balls in the half of north
  2 blue balls in the half of south
play
  players stay in their half
  players of north overarm throw a red ball at the pins of south{more}
  players of south overarm throw a blue ball at the pins of north{more}
  {play}
when
  a pin is knocked: it stays down
finish
  a side wins when the other side has no pins standing
"""


@pytest.mark.parametrize("more", ["", ", 1 in 8 are caught"])
def test_the_lines_advised_can_be_written_and_mend_it(more: str) -> None:
    written = ["a ball is held at most 10 s"]
    while True:
        net = net_in(game_in(SHEET.format(play="\n  ".join(written), more=more)))
        told = " ".join(str(each) for each in findings_told(check(net).findings, net))
        lines = re.findall(r'go back, such as "(.+?)"', told)
        if not lines:
            break
        assert lines[0] not in written and len(written) < 8, written
        written.append(lines[0])
    assert len(written) > 2 and "stay there" not in told

"""Of what lies where each side has a place of its own it is said whose place is meant, in a line that can be read."""

from __future__ import annotations

import pytest
from proofreading import judge_of

SHEET = """
game Orchard
space
  court 20 m by 10 m, halved across
  tree base: 2 m deep, before each back line
sides
  jays and rooks, 6 to 14 players each, mirrored
kit
  10 apples, like a beanbag
set-up
  5 apples in the tree base of each side
play
  players take an apple from the tree base of the other side to their tree base
finish
  a side wins when {claim}
  after 6 min: more apples in the tree base wins, else a draw
"""


@pytest.mark.parametrize("number", ["no", "at most 2"])
def test_the_line_that_is_offered_can_be_read(number: str) -> None:
    judge = judge_of("sheet.rules")
    [found] = judge(SHEET.lstrip().format(claim=f"there are {number} apples in the tree base of the other side"))
    offered = f"the other side has {number} apples in the tree base"
    assert found.code == "G-sense" and offered in str(found.hint)
    assert not judge(SHEET.lstrip().format(claim=offered))

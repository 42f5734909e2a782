"""Who fetches from behind a line to which balls roll anyway has it said for something: no finding calls it idle."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Tern Cones
  ages 8 to 12
space
  court 18 m by 9 m, halved across
  shed zone: 2 m deep, beside the court
sides
  terns and gulls, 2 to 8 players each, mirrored
kit
  4 soft balls, like a foam ball
  2 cones for each side
set-up
  2 soft balls in each half
  cones on the back line of their side
play
  players stay in their half
  players roll a soft ball at the cones of the other side
  a ball is held at most 10 s
{more}
when
  a cone is knocked: it stays down
finish
  a side wins when the other side has no cones standing
"""
GOES_BACK = "\n  a missed ball goes back\n  a scored ball goes back"


@pytest.mark.parametrize(
    ("line", "idle"),
    [
        ("  players fetch balls from behind their back line", False),
        ("  players fetch soft balls from beside their half", False),
        ("  players fetch balls from behind their back line" + GOES_BACK, True),  # none ever rolls there
        ("  the teacher fetches balls from behind each back line", True),  # whoever plays there is quicker
    ],
)
def test_a_line_is_idle_only_where_nothing_rolls(line: str, idle: bool) -> None:
    net = net_in(game_in(SHEET.format(more=line).lstrip()), {"terns": 3, "gulls": 3})
    codes = [each.code for each in findings_told(check(net).findings, net) if "etch" in each.title]
    assert codes == (["C-idle"] if idle else [])

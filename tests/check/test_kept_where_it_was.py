"""A line by which a ball stays where it is takes effect: without it the ball would go elsewhere."""

from __future__ import annotations

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Ash Alone
space
  court 24 m by 14 m, halved across
sides
  ash and birch, 2 players each
kit
  2 foam balls
  2 pails for each side, like a bucket
set-up
  pails on the side line of their side, evenly spaced
  2 foam balls in the half of ash
play
  players stay in their half
  players underarm throw a foam ball at the pails of the other side, from 6 m away
  a missed ball rests in the half of ash
  a scored ball rests in the half of ash
  a ball is held at most 10 s
when
  a pail is knocked: it stays down
finish
  a side wins when the other side has no pails standing
  after 6 min: a draw
"""


def test_what_keeps_a_ball_is_not_idle() -> None:
    """Birch never has a ball, so that only what ash throws is kept by these lines."""
    net = net_in(game_in(SHEET))
    found = findings_told(check(net).findings, net)
    assert [each.code for each in found] == ["C-unwinnable"]
    without = net_in(game_in(SHEET.replace("  a missed ball rests in the half of ash\n", "")))
    assert [each.code for each in findings_told(check(without).findings, without)] == []

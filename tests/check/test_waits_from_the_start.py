"""Whoever waits in a queue from the start and is never brought in sits the whole round out, and that is told."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Waits From the Start
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 3 players each, mirrored
kit
  4 soft balls, like a foam ball
  2 cones for each side
set-up
  2 soft balls in each half
  cones on the back line of their side, evenly spaced
  1 player of each side in the rest queue
play
  players stay in their half
  players underarm throw a soft ball at the cones of the other side
  a ball is held at most 10 s
when
  a cone is knocked: it stays down{more}
finish
  a side wins when the other side has no cones standing
"""


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ("", True),
        ("\n  everyone holds a ball for 5 s: all players change places with all in the queue", True),
        (" and the thrower changes places with the first in the queue", False),
        ("\n  a side has at most 1 cone standing: the first in its rest queue returns", False),
    ],
    ids=["nobody brings them in", "what never happens does", "by an exchange", "by what becomes so"],
)
def test_whoever_is_never_brought_in_is_told(more: str, told: bool) -> None:
    text = SHEET.format(more=more).replace("4 soft balls", "2 soft balls").replace("2 soft balls in", "1 soft ball in")
    net = net_in(game_in(text))
    stranded = [each for each in findings_told(check(net).findings, net) if each.code == "C-stranded"]
    assert bool(stranded) is told
    assert all("in the rest queue" in each.title and not each.place.line for each in stranded)

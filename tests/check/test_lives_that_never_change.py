"""A bell that compares lives which nothing takes: said in lives, not as a sum of who stands where, and once a place."""

from __future__ import annotations

from compose.check import check
from compose.telling.english.findings import findings_told
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Borrowed Candles
space
  court 18 m by 9 m, halved across
  snug queue: beside each half
sides
  moths and bats, 3 players each, mirrored
  each player has 2 lives
kit
  2 yarn balls
set-up
  1 yarn ball in each half
play
  players stay in their half
  players underarm throw a yarn ball at the players of the other side
  whoever waits in the snug queue comes back after 30 s
  a ball is held at most 8 s
when
  a player is hit: that player waits in the snug queue
finish
  after 5 min: more lives wins, else a draw
"""


def test_lives_are_told_as_lives_and_a_line_is_pointed_at_once() -> None:
    net = net_in(game_in(SHEET), {"moths": 3, "bats": 3})
    (found,) = [each for each in findings_told(check(net).findings, net) if each.code == "C-unwinnable"]
    assert "there are never more lives of the moths than lives of the bats" in found.hint
    assert found.place not in found.others

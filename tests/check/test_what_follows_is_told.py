"""A line of play tells what follows at once from a move: else counts change without a word."""

from __future__ import annotations

from compose.check import check
from compose.check.walk import followed, walk
from compose.telling.english.findings import findings_told
from compose.telling.english.moves import move_words
from tests.interpreter.sheets import game_in, net_in

SHEET = """\
game Start Anew
space
  court 16 m by 8 m, halved across
sides
  minnows and otters, 3 players each, mirrored
kit
  2 foam balls
  4 pegs for each side, like a club
set-up
  pegs before the back line of their side, evenly spaced
  1 foam ball in each half
play
  players stay in their half
  players roll a foam ball at the pegs of the other side
  a ball is held at most 10 s
when
  a peg is knocked: the roller's side scores 1 point and it stays down
  a side has no balls in its half: the other side scores 1 point and everything starts again
finish
  the first side to 3 points wins
"""


def test_each_step_tells_what_followed() -> None:
    net = net_in(game_in(SHEET))
    [clash] = [each for each in findings_told(check(net).findings, net) if each.code == "C-two-winners"]
    moves = [step.transition for step in clash.witness if step.transition >= 0]
    markings = walk(net, moves)
    reacted = 0
    for step, before in zip(clash.witness[1:], markings, strict=False):
        after = followed(net, before, step.transition)
        reacted += len(after)
        assert all(move_words(net, each) in step.words for each in after)
        assert ("everything starts again" in step.words) is bool(after)
    assert reacted

"""The counts of a moment are told in French, too, whatever is counted: the clock and rows have no thing."""

from __future__ import annotations

import pytest

from compose.check import explore
from compose.check.space import USUAL, StateSpace
from compose.staging.resolved import resolved
from compose.telling.counts import counts_told
from compose.telling.voice import Voice
from compose.telling.wording import wording_of
from tests.interpreter.sheets import game_in, net_in

GAME = """
game Moments
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 6 players each, mirrored
kit
  1 football
set-up
  north begins with the ball
play
  players stay in their half
  players pass a football to a team-mate
when
  {when}
  3 passes in a row: the passer's side scores 1 point and the other side has the ball
finish
  the first side to 2 points wins
"""
CASES = {
    "the clock": "after 1 min: another football comes in",
    "a first time": "the first time, a pass is intercepted: the catcher's side scores 1 point",
    "a row": "a ball is missed: the other side has the ball",
}


@pytest.mark.parametrize("when", CASES.values(), ids=CASES)
def test_no_count_is_of_nothing(when: str) -> None:
    game = game_in(GAME.format(when=when))
    net = net_in(game, {"north": 2, "south": 2})
    space = explore(net, USUAL)
    assert isinstance(space, StateSpace)
    voice = Voice(resolved(game), wording_of("fr"))
    told = {counts_told(voice, net, marking) for marking in space.encoding.markings(space.codes[:400]).tolist()}
    assert len(told) > 3
    assert not [each for each in told if "None" in each]

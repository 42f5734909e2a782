"""Who has something to do plays, even if they try nothing: they keep a thing, may catch, or are aimed at."""

from __future__ import annotations

import pytest

from compose.forecast.standings import PLAYING, WAITING, standing_of
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Reed Bay
  ages 8 to 12
space
  court 18 m by 9 m, halved across
sides
  north and south, 6 to 10 players each, mirrored
  role keeper: 3 players of each side, nobody aims at them
kit
  4 foam balls
  3 reeds for each side, like a plastic pin
  2 bells for each side, like a cone
set-up
  2 foam balls in each half
  reeds on the back line of their side
  bells on the back line of their side
play
  players stay in their half
  players roll a foam ball at the reeds of the other side
  keepers do not act
{play}
finish
  a side wins when the other side has no reeds standing
"""
BUSY = (
    "  keepers block shots at the reeds of their side with the feet",
    "  a keeper stands before each reed with the hands",
    "  at most 1 keeper may guard each reed",
    "  players pass a foam ball to a team-mate, 1 in 8 are caught",
    "  players underarm throw a foam ball at the keepers of the other side",
)
IDLE = (
    "",
    "  keepers block shots at the bells of their side with the feet",  # at which nobody aims
    "  at most 1 keeper may guard each bell",
    "  players underarm throw a foam ball at the players of the other side",  # of whom keepers are spared
)


@pytest.mark.parametrize("play", [*BUSY, *IDLE])
def test_whoever_keeps_something_or_may_catch_takes_part(play: str) -> None:
    net = net_in(game_in(SHEET.format(play=play)))
    kinds = standing_of(net)
    keepers = {kinds[number] for number, place in enumerate(net.places) if "keeper" in place.name}
    others = {kinds[number] for number, place in enumerate(net.places) if "/-/" in place.name and number in kinds}
    assert (keepers, others) == ({PLAYING if play in BUSY else WAITING}, {PLAYING})

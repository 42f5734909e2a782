"""What is taken from somebody and kept in an area is out of play, as it is told; what falls anywhere is to mend."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Severity
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Keepers of Nuts
space
  court 18 m by 12 m, in one piece
  home base: behind the back line of squirrels
  far base: behind the back line of owls
  den base: along a side line
sides
  squirrels, 2 players
  owls, 1 player
kit
  3 nuts, like a clothes peg
set-up
  nuts in the home base
play
  squirrels take a nut from the home base to the far base
  owls touch squirrels
  {play}
when
  {when}
  a nut arrives: the carrier's side scores 1 point
finish
  after 4 min: more points wins, else a draw
"""
KEPT = "a squirrel who carries a nut is touched: the nut goes to the den base"
FREED = "owls take a nut from the den base to the home base"
BACK = "a squirrel who carries a nut is touched: the nut goes back"


@pytest.mark.parametrize(("when", "play", "severity"), [
    (KEPT, '"Nobody shouts."', Severity.NOTE), (KEPT, FREED, None), (BACK, '"Nobody shouts."', None),
])  # fmt: skip
def test_a_store_is_to_be_known_at_most(when: str, play: str, severity: Severity | None) -> None:
    net = net_in(game_in(SHEET.format(when=when, play=play)), {"squirrels": 2, "owls": 1})
    told = [each.severity for each in findings_told(check(net).findings, net) if each.code == "C-stranded"]
    assert told == ([] if severity is None else [severity])

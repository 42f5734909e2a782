"""Where somebody may be touched is told, with whom the check knows there."""

from __future__ import annotations

import pytest

from compose.staging.resolved import resolved
from compose.telling.read_back import read_back
from compose.telling.wording import wording_of
from tests.interpreter.sheets import game_in

RAID = """
game Raid
space
  court 20 m by 10 m, halved across
  tree base: 2 m deep, before each back line
  prison bench: along a side line
sides
  jays and rooks, 4 to 14 players each, mirrored
kit
  8 apples, like a beanbag
set-up
  4 apples in the tree base of each side
play
  players take an apple from the tree base of the other side to their tree base
  players touch players of the other side {where}
  whoever waits on the prison bench comes back after 30 s
when
  a player is touched: that player goes to the prison bench
finish
  a side wins when the other side has no apples in the tree base
"""


def told(where: str, language: str) -> str:
    back = read_back(resolved(game_in(RAID.format(where=where))), wording_of(language))
    return " ".join(said.text for section in back.sections for said in section.said)


@pytest.mark.parametrize(
    ("language", "whom", "there"),
    [
        ("en", "players of the other side with an apple", " in their half"),
        ("fr", "portant un apple", " dans leur moitié"),
    ],
)
def test_that_it_is_in_ones_own_half_is_told(language: str, whom: str, there: str) -> None:
    assert f"{whom}{there}." in told("in their half", language)
    assert f"{whom}." in told("who carry an apple", language)

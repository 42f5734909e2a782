"""Whether what the others catch was sent at something or passed is told, and so is that there is room at each place."""

from __future__ import annotations

import pytest

from compose.staging.resolved import resolved
from compose.telling.read_back import read_back
from compose.telling.wording import ENGLISH
from tests.interpreter.sheets import game_in

SHEET = """\
game Tide Flats
  ages 8 to 12
space
  court 20 m by 12 m, halved across
  island base: 2 m deep, {where}, at most 3 players there
sides
  curlews and dunlins, 6 to 12 players each, mirrored
kit
  8 foam balls
set-up
  4 foam balls in each half
play
  players stay in their half
{play}
when
  a player is hit: that player waits on the island base
  a ball is caught: the thrower waits on the island base
finish
  after 6 min: more players in wins, else a draw
"""
THROW = "  players overarm throw a foam ball at the players of the other side"
PASS = "  players pass a foam ball to a team-mate on the island base"


def understood(where: str, play: str) -> str:
    """All that is read back of the sheet."""
    core = resolved(game_in(SHEET.format(where=where, play=play)))
    return " ".join(said.text for part in read_back(core, ENGLISH).sections for said in part.said)


@pytest.mark.parametrize(("play", "told"), [((THROW,), "sent by"), ((THROW, PASS), "sent or passed by")])
def test_how_it_was_sent_is_told(play: tuple[str, ...], told: str) -> None:
    said = understood("in 5 places in each half", "\n".join(play))
    assert f"{told} a player of a side is caught by the other side" in said


@pytest.mark.parametrize(("where", "told"), [("in 5 places in each half", "at each"), ("in each half", "there")])
def test_whether_room_is_at_each_place_is_told(where: str, told: str) -> None:
    assert f"at most 3 players {told}" in understood(where, THROW)

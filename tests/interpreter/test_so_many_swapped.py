"""So many who play change places with as many who wait: both readers agree on who comes in."""

from __future__ import annotations

import pytest

from grammar.parse import read
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Swaps
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
  {sides}
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
  1 player of each side in the rest queue
play
  players overarm throw a soft ball at the players of the other side
when
  a player is hit: that player waits in the rest queue
  a ball is caught: {when}
  every 2 min: {clock}
finish
  a side wins when the other side has no players in
  after 4 min: more players in wins, else a draw
"""
PLAIN = {"sides": "", "when": "play goes on", "clock": "1 player changes places with the first in the rest queue"}
WAYS = {
    "one by the clock": {},
    "two by the clock": {"clock": "2 players change places with the first 2 in the rest queue"},
    "more than wait": {"clock": "3 players change places with the first 3 in the rest queue"},
    "of one side": {"clock": "1 player of north changes places with the first in the rest queue of north"},
    "after a catch": {
        "when": "2 players of the catcher's side change places with the first 2 in the catcher's rest queue"
    },
}


def sheet(**changed: str) -> str:
    lines = GAME.format(**{**PLAIN, **changed}).splitlines()
    return "\n".join(line for line in lines if line.strip()) + "\n"


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_know_who_comes_in(way: str) -> None:
    agree(game_in(sheet(**WAYS[way])), {"north": 3, "south": 3})


@pytest.mark.parametrize(
    "changed",
    [
        {"clock": "2 players change places with the first 3 in the rest queue"},
        {"clock": "2 players change places with all in the rest queue"},
        {"clock": "2 players change places with the last 2 in the rest queue"},
        {"sides": "each player has 2 lives"},
        {"sides": "role guard: 1 player of each side"},
    ],
)
def test_what_would_be_unclear_is_refused(changed: dict[str, str]) -> None:
    told = resolve(read(sheet(**changed)).rules.games[0], kit_categories())
    assert [finding.code for finding in told.findings] == ["G-sense"]

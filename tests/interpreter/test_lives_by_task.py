"""Lives by task, and what hangs on who has none left: the second reader and the net agree."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 2, "south": 2}
LIVES = """
game Kings
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 14 players each
  role king: 1 player of each side
  {sides}
kit
  1 foam ball
set-up
  1 foam ball in the half of north
play
  players roll a foam ball at the players of the other side
when
  a player is hit: that player loses a life
finish
  a side wins when {wins}
"""
OUT = "the other side has all kings out"
CASES = {
    "a king has more": ("each king has 3 lives\n  each other player has 1 life", OUT),
    "in the other order": ("each player has 1 life\n  the king has 3 lives", OUT),
    "only kings have lives": ("each king has 2 lives", OUT),
    "of one side": ("each player has 2 lives\n  north players have 1 life\n  each king of north has 3 lives", OUT),
    "as many out": ("each player has 1 life", "it has at least 1 player in and the other side has 2 players out"),
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    lives, wins = CASES[case]
    game = game_in(LIVES.format(sides=lives, wins=wins))
    mine, its = read_by_both(game, PLAYERS)
    assert its.differs(mine) == ""
    assert {result for result in its.results.values() if result} >= {"north", "south"}


@pytest.mark.parametrize(
    "lines",
    [
        "each player has 2 lives\n  each player has 3 lives",
        "each other player has 2 lives",
        "each king has 2 lives\n  the king of each side has 3 lives",
    ],
)
def test_lines_that_say_two_things_are_refused(lines: str) -> None:
    parsed = parse(LIVES.format(sides=lines, wins=OUT).lstrip("\n"), "(test)")
    assert parsed.value is not None
    assert any(each.code == "G-sense" for each in resolve(parsed.value.games[0], library.kit_categories()).findings)

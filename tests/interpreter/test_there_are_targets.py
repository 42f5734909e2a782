"""How targets stand is said of what is nobody's without a side: "there are no planks standing", in both readers."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

GAME = """
game Planks
space
  court 16 m by 10 m, halved across
sides
  weir and mill, 2 to 12 players each, mirrored
kit
  2 foam balls
  {kit}
set-up
  {set_up}
  1 foam ball in each half
play
  players stay in their half
  players roll a foam ball at the planks{whose}
when
  a plank is knocked: it stays down and the roller's side scores 1 point
finish
  the round ends when there are {many}, more points wins
"""
OF_NOBODY = {"kit": "3 planks, like a box", "set_up": "planks on the middle line, evenly spaced", "whose": ""}
OF_SIDES = {
    "kit": "1 plank for each side, like a box",
    "set_up": "planks on the back line of their side",
    "whose": " of the other side",
}
WAYS = {
    "none": OF_NOBODY | {"many": "no planks standing"},
    "at most one": OF_NOBODY | {"many": "at most 1 plank standing"},
    "two down": OF_NOBODY | {"many": "2 planks down"},
    "none of any side": OF_SIDES | {"many": "no planks standing"},
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_come_to_the_same(way: str) -> None:
    game = game_in(GAME.format(**WAYS[way]))
    ours, theirs = read_by_both(game, {"weir": 2, "mill": 2})
    assert ours == theirs
    assert ours.results


def test_how_many_stand_of_those_of_several_sides_is_asked_of_whom() -> None:
    parsed = parse(GAME.format(**OF_SIDES, many="at most 1 plank standing").lstrip("\n"), "(test)").value
    assert parsed is not None
    assert resolve(parsed.games[0], library.kit_categories()).findings

"""What a target is worth, and a whole set of them: both readers count the same points."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Worth
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 6 players each, mirrored
kit
  2 soft balls, like a foam ball
  2 cones for each side
  1 bottle for each side, like a plastic pin
  1 gate for each side, like a hoop
  2 pots, like a cone
set-up
  1 soft ball in each half
  cones on the back line of their side
  bottles on the back line of their side
  gates behind the back line of their side
  pots in the middle
play
  players overarm throw a soft ball at {aims}
when
  {rules}
finish
  the first side to 6 points wins
"""
SHEETS = {
    "each its own": ("the cones or the bottles of the other side", "bottles score 1 and cones 2 points"),
    "and a gate": ("the gate or the cones of the other side", "cones score 1 and gates 3 points"),
    "a set of a side": (
        "the cones of the other side",
        "cones score 1 point\n  all cones of the other side down: 3 points",
    ),
    "a set of nobody": ("the pots", "a pot is knocked: the thrower's side scores 1 point\n  all pots down: 2 points"),
    "a set and another line": (
        "the cones of the other side",
        "all cones down: 3 points\n"
        "  a cone is knocked while it has 1 cone standing: the thrower's side scores 2 points",
    ),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_count_the_same_points(sheet: str) -> None:
    aims, rules = SHEETS[sheet]
    agree(game_in(GAME.format(aims=aims, rules=rules)), {"north": 2, "south": 2})


def test_what_neither_falls_nor_is_brought_home_is_worth_nothing() -> None:
    """Such points were dropped without a word beside those of what falls."""
    text = GAME.format(aims="the cones of the other side", rules="cones score 1 and eggs 4 points")
    text = text.replace("\nset-up\n", "\n  1 egg, like a gym ball\nset-up\n  egg in the middle\n")
    sheet = parse(text.lstrip("\n"), "(test)").value
    assert sheet is not None
    found = resolve(sheet.games[0], library.kit_categories()).findings
    assert [each.title for each in found if "`eggs`" in each.title]

"""Small things that are taken from place to place lie in a heap where no floor is free for each of them."""

from __future__ import annotations

import pytest
from floor_games import floor_in, game_of
from hypothesis import given, settings
from hypothesis import strategies as st

from compose.staging.floor.items import HANDFUL_M

BANKS = """
game Banks
space
  court 16 m by 16 m, in one piece
  bank base: in each corner
  store base: in the middle
sides
  red, green, blue and yellow, 2 to 6 players each, mirrored
kit
  {beanbags} beanbags
  1 red beanbag, like a beanbag
  2 skittles, like a plastic pin
set-up
  skittles in the store base
  beanbags {where}
  red beanbag in the store base
play
  {play}
finish
  at the end beanbags in the bank base score 1 and red beanbags 3 points
  after 4 min: more points wins, else a draw
"""
TAKEN = "players take a beanbag or a red beanbag from the store base to their bank base"
PLAYERS = dict.fromkeys(("red", "green", "blue", "yellow"), 6)


def banks(beanbags: int, wide_m: float, where: str = "in the store base"):
    game = game_of(BANKS.format(beanbags=beanbags, play=TAKEN, where=where))
    return floor_in(game, PLAYERS, {"beanbag": (wide_m, 0.05)})


@settings(max_examples=5)
@given(st.integers(2, 60), st.floats(0.05, HANDFUL_M))
def test_however_many_there_are_they_find_place_within_the_base(beanbags: int, wide_m: float) -> None:
    floor = banks(beanbags, wide_m)
    (store,) = (area.rectangle for area in floor.areas if area.name == "store base")
    assert not floor.problems
    laid = [*floor.items_of("beanbag"), *floor.items_of("red beanbag")]
    assert len(laid) == beanbags + 1
    assert all(store.holds(each.x, each.y) for each in laid)
    assert all(each.clear_of(pin) > 0 for each in laid for pin in floor.items_of("skittle"))


def test_where_floor_is_free_each_lies_by_itself() -> None:
    laid = banks(12, 0.1).items_of("beanbag")
    assert all(one is other or one.clear_of(other) > 0 for one in laid for other in laid)


def test_what_is_only_thrown_lies_in_no_heap() -> None:
    """Balls that nobody carries off lie side by side."""
    text = BANKS.format(beanbags=90, play=TAKEN.replace("a beanbag or ", ""), where="in the store base")
    assert floor_in(game_of(text), PLAYERS, {"beanbag": (0.2, 0.05)}).problems


@pytest.mark.parametrize(("wide_m", "where"), [
    (HANDFUL_M + 0.1, "in the store base"),
    (HANDFUL_M, "in the store base, in a ring"),
])  # fmt: skip
def test_what_is_large_or_stands_in_a_pattern_lies_in_no_heap(wide_m: float, where: str) -> None:
    assert banks(90, wide_m, where).problems

"""One place for all lies once and is nobody's, by the edge that its line names; a ring around a place holds it."""

from __future__ import annotations

import pytest
from floor_games import floor_in, game_of, halved

from compose.staging.floor.values import Rectangle

COURT = Rectangle(0.0, 0.0, 18.0, 9.0)
FREE_CORNER = """
game Three Harbours
space
  court 18 m by 9 m, in one piece
  yard base: in a corner
  harbour base: in each corner
sides
  red, blue and green, 2 to 8 players each, mirrored
kit
  3 foam balls
set-up
  foam balls in the middle
play
  players overarm throw a foam ball at the players of the other side
finish
  a side wins when the other side has no players in
"""


@pytest.mark.parametrize(
    "lies", ["along a side line", "beside a side line", "before a back line", "behind a back line", "in a corner"]
)
def test_it_lies_once_and_on_one_edge(lies: str) -> None:
    floor = floor_in(halved(space=f"heap zone: 2 m deep, {lies}"), {"east": 6, "west": 6})
    (area,) = (each for each in floor.areas if each.name == "heap zone")
    assert area.owner is None
    assert area.rectangle.overlaps(COURT) is lies.startswith(("along", "before", "in"))
    edges = (COURT.left, COURT.right, COURT.bottom, COURT.top)
    box = area.rectangle
    assert any(abs(one - other) < 0.5 for one in (box.left, box.right, box.bottom, box.top) for other in edges)


def test_of_three_sides_the_corner_that_nobody_has_is_for_all() -> None:
    floor = floor_in(game_of(FREE_CORNER), {"red": 3, "blue": 3, "green": 3})
    (yard,) = (each.rectangle for each in floor.areas if each.name == "yard base")
    harbours = [each.rectangle for each in floor.areas if each.name == "harbour base"]
    assert len(harbours) == 3
    assert not any(yard.overlaps(harbour) for harbour in harbours)


def test_a_ring_around_a_place_reaches_so_far_beyond_it_on_every_side() -> None:
    space = "den zone: 2 m deep, in the middle\nguard circle: 1.5 m deep, around the den zone"
    floor = floor_in(halved(space=space), {"east": 6, "west": 6})
    boxes = {each.name: each.rectangle for each in floor.areas}
    den, ring = boxes["den zone"], boxes["guard circle"]
    assert ring == den.grown(1.5)

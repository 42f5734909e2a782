"""Of a court in equal parts four sides have a quarter each: equally far from the others, and at the rim."""

from __future__ import annotations

from itertools import permutations

import pytest

from compose.staging.floor.ground import Ground, bare_ground
from compose.staging.floor.regions import regions
from compose.staging.resolved import resolved
from grammar.core.values import Landmark, Part, Spot
from tests.interpreter.sheets import game_in

GAME = """
game Parts
space
  court {long} m by {wide} m, in equal parts
sides
  {sides}, 3 to 8 players each, mirrored
kit
  {balls} foam balls
  2 cones for each side
set-up
  cones on the back line of their side, evenly spaced
  2 foam balls in each half
play
  players stay in their half
  players roll a foam ball at the cones of the other side
finish
  a side wins when the other side has no cones standing
"""
FOUR = "ash, birch, cedar and rowan"


def ground(sides: str, long: int = 20, wide: int = 14) -> Ground:
    return bare_ground(
        resolved(game_in(GAME.format(sides=sides, long=long, wide=wide, balls=2 * (sides.count(",") + 2)))).play
    )


@pytest.mark.parametrize(("long", "wide"), [(16, 16), (20, 14), (12, 18)])
def test_quarters_are_alike_and_cover_the_court(long: int, wide: int) -> None:
    court = ground(FOUR, long, wide)
    parts = [court.slice_of(side) for side in court.sides]
    assert sum(part.length * part.width for part in parts) == pytest.approx(long * wide)
    assert all(one.common_m2(other) == 0 for one, other in permutations(parts, 2))
    far = [sorted((other.centre[0] - one.centre[0]) ** 2 + (other.centre[1] - one.centre[1]) ** 2 for other in parts)
           for one in parts]  # fmt: skip
    assert all(each == pytest.approx(far[0]) for each in far)


@pytest.mark.parametrize("where", [Landmark.BACK_LINE, Landmark.CORNER, Landmark.SIDE_LINE])
@pytest.mark.parametrize("part", [Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE])
def test_what_is_a_sides_own_lies_by_its_quarter(where: Landmark, part: Part) -> None:
    """Nearer to its quarter than to any other, on the court or beside it."""
    court = ground(FOUR)
    for side in court.sides:
        for region in regions(court, Spot(where, side, part), 1.0):
            x, y = region.rectangle.centre
            near = min(court.sides, key=lambda each: abs(court.slice_of(each).centre[0] - x)
                       + abs(court.slice_of(each).centre[1] - y))  # fmt: skip
            assert near == side, (side, region)


def test_three_and_five_sides_lie_side_by_side() -> None:
    for sides in ("ash, birch and cedar", "ash, birch, cedar, rowan and elm"):
        court = ground(sides)
        assert all(court.slice_of(side).width == court.width_m for side in court.sides)

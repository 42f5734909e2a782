"""Distances of attempts, worked out by hand."""

from __future__ import annotations

from math import asinh, hypot, sqrt

import pytest
from floor_games import HOME_BASES, game_of, halved

from compose.staging.floor.distance import reach_of
from compose.staging.floor.floor import distance_m, floor_of

SIZES = {"skittle": (0.1, 0.3)}
PLAYERS = {"east": 6, "west": 6}


def far(game, target, owner="west", **more):
    floor = floor_of(game, PLAYERS, SIZES)
    return distance_m(floor, game, thrower_side="east", target=target, owner_side=owner, **more)


def lanterns(space="", play="players stay in their half", sides=""):
    return halved(
        space=space,
        kit="5 lanterns for each side, like a skittle",
        setup="lanterns on the back line of their side",
        play=play,
        sides=sides,
    )


def test_from_a_metre_behind_the_middle_line_to_the_back_line():
    game = lanterns()
    assert far(game, "lantern") == pytest.approx(18 - 0.15 - 8)
    assert far(game, "line", place="back line") == pytest.approx(10)
    assert far(game, "player") == pytest.approx(13.5 - 8)


def test_a_strip_that_nobody_enters_keeps_throwers_back():
    game = lanterns(space="stream strip: 4 m deep, across the middle, nobody enters there")
    assert far(game, "lantern") == pytest.approx(17.85 - 6)


def test_a_strip_that_nobody_guards_does_not():
    game = lanterns(space="stream strip: 4 m deep, across the middle, nobody guards there")
    assert far(game, "lantern") == pytest.approx(9.85)


def test_who_stays_behind_the_back_line_throws_from_there():
    game = lanterns(play="players stay behind their back line")
    assert far(game, "lantern") == pytest.approx(17.85 + 0.3 + 1.0)


def test_a_role_with_a_distance_uses_it():
    game = lanterns(sides="role marksman: 1 player of each side, aims from 6 m")
    assert far(game, "lantern", role="marksman") == 6
    assert far(game, "lantern", role=None) == pytest.approx(9.85)


def test_team_mates_stand_anywhere_in_their_half():
    # The mean distance between two points of a unit square is 0.5214 (a known integral); a grid of
    # cells meets it within 1 %.
    exact = (2 + sqrt(2) + 5 * asinh(1)) / 15
    assert far(lanterns(), "mate", owner="east") == pytest.approx(9 * exact, rel=0.01)


def test_things_on_shared_floor_are_met_from_anywhere():
    game = game_of(HOME_BASES)
    floor = floor_of(game, {"everyone": 8})
    found = distance_m(floor, game, thrower_side="everyone", target="cone", owner_side=None)
    assert 4 < found < 7


def test_a_thing_at_the_edge_of_the_floor_is_aimed_at_from_anywhere_on_it():
    # The mean distance from a square of side 9 to the middle of one of its sides, by a fine sum.
    fine = [(i + 0.5) * 9 / 200 for i in range(200)]
    exact = sum(hypot(9 - x, 4.5 - y) for x in fine for y in fine) / len(fine) ** 2
    game = halved(kit="1 cone", setup="cone in the middle", play="players stay in their half")
    assert far(game, "cone", owner=None) == pytest.approx(exact, rel=0.01)


def test_never_below_a_metre():
    game = halved(court="2 m by 2 m", kit="1 cone", setup="cone in the middle", play="players stay in their half")
    assert far(game, "cone", owner=None) == 1.0


def test_a_distance_to_a_row_does_not_hang_on_the_size_of_its_things():
    game = lanterns()
    bare = floor_of(game, PLAYERS)
    assert distance_m(bare, game, thrower_side="east", target="lantern", owner_side="west") == far(game, "lantern")


def test_a_carry_goes_from_place_to_place():
    game = halved(kit="1 cone", setup="cone in the middle")
    assert far(game, "line", place="back line", start="back line") == pytest.approx(18)


def test_the_ends_of_a_throw_are_as_far_apart_as_it_is_long():
    game = lanterns(sides="role marksman: 1 player of each side, aims from 6 m")
    floor = floor_of(game, PLAYERS)
    for role, metres in ((None, 9.85), ("marksman", 6.0)):
        reach = reach_of(floor, game, thrower_side="east", target="lantern", owner_side="west", role=role)
        assert reach.metres == pytest.approx(metres)
        assert hypot(reach.start[0] - reach.goal[0], reach.start[1] - reach.goal[1]) == pytest.approx(metres)

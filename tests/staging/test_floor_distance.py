"""Distances of attempts, worked out by hand."""

from __future__ import annotations

from itertools import pairwise
from math import asinh, hypot, sqrt

import pytest
from floor_games import HOME_BASES, at, floor_in, game_of, halved, players_of, reached

from compose.staging.floor.distance import reach
from compose.staging.resolved import resolved
from grammar.core.play import Along, AtPlayers, Past, ToMate
from grammar.core.values import Landmark, OnStep, Presence, SideId, Spot

SIZES = {"skittle": (0.1, 0.3)}
PLAYERS = {"east": 6, "west": 6}
BACK = Past(Spot(Landmark.BACK_LINE, SideId("west")))
PLAYERS_OF_WEST = AtPlayers(frozenset({players_of("west")}))


def far(game, aim, role=None):
    return reached(game, floor_in(game, PLAYERS, SIZES), players_of("east", role), aim).metres


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
    assert far(game, at("lantern", "west")) == pytest.approx(18 - 0.15 - 8)
    assert far(game, BACK) == pytest.approx(10)
    assert far(game, PLAYERS_OF_WEST) == pytest.approx(13.5 - 8)


def test_a_strip_that_nobody_enters_keeps_throwers_back():
    game = lanterns(space="stream strip: 4 m deep, across the middle, nobody enters there")
    assert far(game, at("lantern", "west")) == pytest.approx(17.85 - 6)


def test_a_strip_that_nobody_guards_does_not():
    game = lanterns(space="stream strip: 4 m deep, across the middle, nobody guards there")
    assert far(game, at("lantern", "west")) == pytest.approx(9.85)


def test_who_stays_behind_the_back_line_throws_from_there():
    game = lanterns(play="players stay behind their back line")
    assert far(game, at("lantern", "west")) == pytest.approx(17.85 + 0.3 + 1.0)


def test_a_role_with_a_distance_uses_it():
    game = lanterns(sides="role marksman: 1 player of each side, aims from 6 m")
    assert far(game, at("lantern", "west"), "marksman") == 6
    assert far(game, at("lantern", "west")) == pytest.approx(9.85)


def test_team_mates_stand_anywhere_in_their_half():
    # The mean distance between two points of a unit square is 0.5214 (a known integral); a grid of
    # cells meets it within 1 %.
    exact = (2 + sqrt(2) + 5 * asinh(1)) / 15
    assert far(lanterns(), ToMate(frozenset({players_of("east")}), frozenset({Presence.PLAYING}))) == pytest.approx(
        9 * exact, rel=0.01
    )


def test_things_on_shared_floor_are_met_from_anywhere():
    game = game_of(HOME_BASES)
    floor = floor_in(game, {"everyone": 8})
    found = reached(game, floor, players_of("everyone"), at("cone")).metres
    assert 4 < found < 7


def test_a_thing_at_the_edge_of_the_floor_is_aimed_at_from_anywhere_on_it():
    # The mean distance from a square of side 9 to the middle of one of its sides, by a fine sum.
    fine = [(i + 0.5) * 9 / 200 for i in range(200)]
    exact = sum(hypot(9 - x, 4.5 - y) for x in fine for y in fine) / len(fine) ** 2
    game = halved(kit="1 cone", setup="cone in the middle", play="players stay in their half")
    assert far(game, at("cone")) == pytest.approx(exact, rel=0.01)


def test_never_below_a_metre():
    game = halved(court="2 m by 2 m", kit="1 cone", setup="cone in the middle", play="players stay in their half")
    assert far(game, at("cone")) == 1.0


def test_a_distance_to_a_row_does_not_hang_on_the_size_of_its_things():
    game = lanterns()
    bare = floor_in(game, PLAYERS)
    assert reached(game, bare, players_of("east"), at("lantern", "west")).metres == far(game, at("lantern", "west"))


def test_a_carry_goes_from_place_to_place():
    game = halved(kit="1 cone", setup="cone in the middle")
    east, west = (Spot(Landmark.BACK_LINE, SideId(side)) for side in ("east", "west"))
    assert far(game, Along(east, west, again=True)) == pytest.approx(18)


def test_from_wall_to_wall_is_the_whole_court_for_who_plays_alone():
    game = game_of(HOME_BASES)
    wall = Spot(Landmark.WALL, SideId("everyone"))
    found = reached(game, floor_in(game, {"everyone": 8}), players_of("everyone"), Along(wall, wall, again=True))
    assert found.metres == pytest.approx(16)


def test_the_ends_of_a_throw_are_as_far_apart_as_it_is_long():
    game = lanterns(sides="role marksman: 1 player of each side, aims from 6 m")
    floor = floor_in(game, PLAYERS)
    for role, metres in ((None, 9.85), ("marksman", 6.0)):
        found = reached(game, floor, players_of("east", role), at("lantern", "west"))
        assert found.metres == pytest.approx(metres)
        assert hypot(found.start[0] - found.goal[0], found.start[1] - found.goal[1]) == pytest.approx(metres)


TRACK = """
game Whale Push
space
  court 18 m by 9 m, halved across
  whale track: {steps} steps, from north to south
sides
  north and south, 6 to 14 players each, mirrored
kit
  12 foam balls
  3 whales, like a gym ball
set-up
  whales on step 1 of the whale track
  6 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the whales
when
  a whale is knocked: it moves 1 step away from the thrower
finish
  a side wins when it has a whale at home
"""


def by_step(steps, side):
    game = game_of(TRACK.format(steps=steps))
    floor, core = floor_in(game, {"north": 6, "south": 6}), resolved(game)
    track = core.play.tracks[0].id
    found = range(steps + 1)
    return [reach(floor, core, players_of(side), at("whale"), None, OnStep(track, step)).metres for step in found]


@pytest.mark.parametrize("steps", [2, 7, 8, 19])
def test_the_steps_of_a_track_mirror_each_other(steps):
    assert by_step(steps, "north") == pytest.approx(by_step(steps, "south")[::-1])


def test_no_distance_jumps_because_a_thing_crosses_a_line():
    far, step_m = by_step(20, "north"), 18 / 20
    assert max(abs(one - other) for one, other in pairwise(far)) < 1.6 * step_m
    assert far[-1] == pytest.approx(10.0, abs=0.01)


ALONE = """
game Alone
space
  court 18 m by 9 m, in one piece
  {area}
sides
  east and west, 2 to 20 players each, mirrored
  role keeper: 1 player of each side
kit
  1 foam ball
  {kit}, like a skittle
set-up
  foam balls in the middle
  {start}
play
  {play}
  players overarm throw a foam ball at the {aim}
finish
  after 5 min: a draw
"""


def test_a_zone_for_keepers_alone_keeps_all_others_out():
    game = game_of(
        ALONE.format(
            area="goal zone: 4 m deep, before each back line, only keepers there",
            kit="1 lantern for each side",
            start="lanterns on the back line of their side",
            play="keepers stay in the goal zone",
            aim="lanterns of the other side",
        )
    )
    assert far(game, at("lantern", "west")) == pytest.approx(4 + 1 - 0.15)
    assert far(game, at("lantern", "west"), "keeper") == pytest.approx(18 - 0.15 - 3)


def test_a_circle_for_some_alone_keeps_all_others_out():
    """They stand around it: nearest on the 1.5 m beside it, in the middle of these."""
    game = game_of(
        ALONE.format(
            area="den circle: 6 m deep, in the middle, only players of west there",
            kit="1 den",
            start="dens in the den circle",
            play="players of west stay in the den circle",
            aim="den",
        )
    )
    assert far(game, at("den")) == pytest.approx(3 + 1.5 / 2)

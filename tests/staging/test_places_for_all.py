"""One place for all lies once and is nobody's, by the edge that its line names; a ring around a place holds it."""

from __future__ import annotations

from itertools import combinations

import pytest
from floor_games import FOUR_MATS, floor_in, game_of, halved

import library
from compose.modifiers.apply import remix
from compose.staging.benches import benches_of
from compose.staging.floor.values import Rectangle
from compose.staging.resolved import resolved
from compose.terminal.typed.finding_games import use
from grammar.core.values import SHARED, Landmark
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import library_game

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
  players fetch balls from their harbour base
finish
  a side wins when the other side has no players in
"""
MARMOTS = """
game Marmot Run
space
  court 14 m by 5 m, in one piece
  roller zone: 2 m deep, {lies}, only rollers enter there
sides
  marmots, 4 players
  rollers, 4 players
kit
  4 foam balls
set-up
  rollers in the roller zone
  foam balls on the court
play
  rollers roll a foam ball at the marmots
  {play}
finish
  rollers win when marmots have no players in
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


@pytest.mark.parametrize("sides", [
    "north and south, 4 players each, mirrored",
    "red, blue and green, 3 players each, mirrored",
    "hares, 12 players, each for themselves",
])  # fmt: skip
def test_where_nothing_hangs_on_whose_it_is_there_is_one_in_every_corner_for_all(sides: str) -> None:
    """Four mats stand in the four corners, however many sides there are."""
    game = game_of(FOUR_MATS.format(sides=sides, play="players run from wall to wall"))
    floor = floor_in(game, {side.name: side.most for side in game.sides})
    bases = floor.areas
    assert {(each.rectangle.centre[0] > 9, each.rectangle.centre[1] > 4.5) for each in bases} == {
        (False, False), (False, True), (True, False), (True, True)
    }  # fmt: skip
    assert len(bases) == 4 and all(each.owner is None for each in bases)


@pytest.mark.parametrize("of", ["the", "each"])
def test_a_ring_around_places_for_all_is_for_all_and_leaves_them_so(of: str) -> None:
    """To say "each" of a place that lies in every corner gives it to nobody, and the ring lies around all four."""
    text = FOUR_MATS.format(sides="hares and foxes, 6 players each", play="players run from wall to wall")
    ring = text.replace("\nsides", f"\n  fox circle: 1 m deep, around {of} mat base, no foxes there\nsides", 1)
    alone, ringed = (floor_in(game_of(each), {"hares": 6, "foxes": 6}) for each in (text, ring))
    mats = [each for each in ringed.areas if each.name == "mat base"]
    rings = [each for each in ringed.areas if each.name == "fox circle"]
    assert mats == list(alone.areas)
    assert [each.rectangle for each in rings] == [each.rectangle.grown(1) for each in mats]
    assert all(each.owner is None for each in rings)


@pytest.mark.parametrize(("around", "play"), [
    ("the mat base of foxes", "players stay on the court"),
    ("each mat base", "foxes stay in their fox circle"),
])  # fmt: skip
def test_a_ring_that_is_a_side_s_makes_the_place_a_side_s(around: str, play: str) -> None:
    text = FOUR_MATS.format(sides="hares and foxes, 6 players each", play="players run from wall to wall")
    text = text.replace("\nsides", f"\n  fox circle: 1 m deep, around {around}\nsides", 1)
    text = text.replace("\nwhen", f"\n  {play}\nwhen", 1)
    assert all(each.owner is not SHARED for each in resolved(game_of(text)).play.areas)


def marmots(lies: str, play: str = "nobody runs with the ball") -> Game:
    return game_of(MARMOTS.format(lies=lies, play=play))


def test_both_side_lines_are_for_those_who_start_there_and_they_stay() -> None:
    """Whoever starts where only they enter, to send balls from there, is not said to stay elsewhere."""
    game = marmots("along each side line")
    (zone,) = resolved(game).play.areas
    (stay,) = (home.at for home in resolved(game).play.homes if home.who.side.key == "rollers")
    assert (zone.owner, zone.places, stay.of, stay.owner) == (SHARED, 2, zone.id, SHARED)
    boxes = [each.rectangle for each in floor_in(game, {"marmots": 4, "rollers": 4}).areas]
    assert sorted(box.centre[1] for box in boxes) == [1.0, 4.0]


@pytest.mark.parametrize(("lies", "play"), [
    ("along each side line of rollers", "nobody runs with the ball"),
    ("along each side line", "rollers fetch balls from their roller zone"),
    ("along each side line", "rollers stay in their roller zone"),
])  # fmt: skip
def test_where_a_line_says_whose_it_is_it_is_a_side_s(lies: str, play: str) -> None:
    areas = resolved(marmots(lies, play)).play.areas
    assert all(area.owner is not SHARED and area.places == 1 for area in areas)


def test_a_line_that_says_where_they_stay_wins() -> None:
    homes = resolved(marmots("along each side line", "rollers stay on the court")).play.homes
    assert {home.at.of for home in homes} == {Landmark.COURT}


def test_a_ring_around_a_place_reaches_so_far_beyond_it_on_every_side() -> None:
    space = "den zone: 2 m deep, in the middle\nguard circle: 1.5 m deep, around the den zone"
    floor = floor_in(halved(space=space), {"east": 6, "west": 6})
    boxes = {each.name: each.rectangle for each in floor.areas}
    den, ring = boxes["den zone"], boxes["guard circle"]
    assert ring == den.grown(1.5)


@pytest.mark.parametrize(("lies", "number"), [("in 4 places on the court", 4), ("in 3 places in each half", 6)])
def test_islands_lie_apart_on_the_floor_they_are_spread_over(lies: str, number: int) -> None:
    floor = floor_in(halved(space=f"island base: 1 m deep, {lies}"), {"east": 6, "west": 6})
    boxes = [each.rectangle for each in floor.areas if each.name == "island base"]
    assert len(boxes) == number
    assert not any(one.overlaps(other) for one, other in combinations(boxes, 2))
    assert all((box.length, box.width, box.common_m2(COURT)) == pytest.approx((1.0, 1.0, 1.0)) for box in boxes)
    assert sum(box.centre[0] < COURT.centre[0] for box in boxes) == number / 2


@pytest.mark.parametrize(("lies", "wrong"), [
    ("in 1 places on the court", "An area lies in 2 to 12 places, not in 1."),
    ("in 40 places on the court", "An area lies in 2 to 12 places, not in 40."),
    ("in 4 places before each back line", "`each back line` has no room for several places."),
])  # fmt: skip
def test_so_many_places_must_have_room_there(lies: str, wrong: str) -> None:
    (sheet,) = parse(MARMOTS.format(lies=lies, play="nobody runs with the ball"), "marmots.rules").value.games
    assert [each.title for each in resolve(sheet, library.kit_categories()).findings] == [wrong]


BENCHES = """
game Dry Dock
space
  court 18 m by 9 m, in one piece
  dock bench: {lies}
sides
  red and blue, 6 to 12 players each, mirrored
kit
  4 foam balls
set-up
  foam balls in the middle
{sitting}
play
  players overarm throw a foam ball at the players of the other side
when
  a player is hit: that player goes to the dock bench
finish
  a side wins when the other side has no players in
"""


@pytest.mark.parametrize("lies", ["along a side line", "beside the court", "along a back line"])
@pytest.mark.parametrize(("sitting", "benches"), [("", 1), ("  4 players of each side on the dock bench", 2)])
def test_a_bench_for_all_is_as_long_as_benches_are_and_off_the_court(lies: str, sitting: str, benches: int) -> None:
    """Eight who sit there at the start need 6.4 m: two benches of 3.5 m."""
    game = game_of(BENCHES.format(lies=lies, sitting=sitting))
    floor = floor_in(game, {"red": 8, "blue": 8})
    (box,) = (each.rectangle for each in floor.areas)
    assert not box.overlaps(COURT) and not floor.problems
    assert max(box.length, box.width) == pytest.approx(3.5 * benches)
    needed = benches_of(game, 1, library.kit_names())
    assert needed is not None and needed.needed == benches


@pytest.mark.parametrize("rule", ["nobody is touched there", "nobody is hit there"])
def test_nothing_lies_on_a_mat_where_one_is_safe(rule: str) -> None:
    space = f"island base: 1.5 m deep, in 4 places in each half, {rule}"
    floor = floor_in(
        halved(space=space, kit="10 yarn balls", setup="yarn balls on the court"), {"east": 12, "west": 12}
    )
    mats = [each.rectangle for each in floor.areas]
    assert len(mats) == 8 and len(floor.items_of("yarn ball")) == 10
    for item in floor.items:
        assert all(box.distance_m(item.x, item.y) >= item.radius - 1e-6 for box in mats), item


def test_safe_islands_are_mats_that_lie_there() -> None:
    made = remix(library_game("marten-larders"), [use("safe islands, n 6")], library.kit_names()).value
    assert made is not None
    floor = floor_in(made.game, {"martens": 12, "polecats": 12})
    islands = [each.rectangle for each in floor.areas if each.name == "island base"]
    mats = floor.items_of("mat")
    assert len(islands) == len(mats) == 6 and not floor.problems
    assert all(any(box.holds(mat.x, mat.y, mat.radius) for mat in mats) for box in islands)

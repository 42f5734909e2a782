"""The floor: nothing overlaps, nothing is off the court, and what does not fit is told in metres."""

from __future__ import annotations

from itertools import combinations

import pytest
from floor_games import FAR_BENCH, FOUR_CORNERS, HOME_BASES, floor_in, game_of, halved, players_of, reached
from hypothesis import given, settings
from hypothesis import strategies as st

from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from grammar.core.play import ToMate
from grammar.game import Game

PATTERNS = ("evenly spaced", "in a ring", "staggered", "in a triangle", "close together")
ON_COURT = (
    "on the back line of their side",
    "on the middle line",
    "in their half",
    "before the back line of their side",
    "in the middle",
)
LANTERNS = halved(
    space="dim strip: 2 m deep, before each back line, nobody guards there",
    kit="5 lanterns for each side, like a skittle",
    setup="lanterns on the back line of their side, evenly spaced",
    play="players stay in their half",
)


def overlapping(floor: Floor) -> list[str]:
    pairs = combinations([item for item in floor.items if item.on is None], 2)
    return [f"{a} {b}" for a, b in pairs if a.clear_of(b) < -1e-9]


def full(game: Game) -> dict[str, int]:
    return {side.name: side.most for side in game.sides}


@settings(max_examples=60, deadline=None)
@given(
    st.integers(1, 30),
    st.tuples(st.integers(2, 20), st.integers(2, 20)),
    st.sampled_from(PATTERNS),
    st.sampled_from(ON_COURT),
    st.tuples(st.floats(4, 40), st.floats(4, 20)),
)
def test_nothing_overlaps_and_all_is_on_the_court(cones, players, how, where, size):
    (length, width), (east, west) = size, players
    game = halved(
        court=f"{length:.2f} m by {width:.2f} m",
        kit=f"{cones} {'cone' if cones == 1 else 'cones'} for each side",
        setup=f"cones {where}, {how}",
    )
    floor = floor_in(game, {"east": east, "west": west})
    assert not overlapping(floor)
    assert all(floor.court.holds(item.x, item.y, item.box.length / 2) for item in floor.items)
    assert all(
        floor.court.bottom - 1e-6 <= item.box.bottom and item.box.top <= floor.court.top + 1e-6 for item in floor.items
    )
    short = sum(dict(problem.numbers)["wanted"] - dict(problem.numbers)["placed"] for problem in floor.problems)
    assert len(floor.items) + short == 6 + 2 * cones + east + west
    assert all(dict(problem.numbers)["short_m"] > 0 for problem in floor.problems)


@settings(max_examples=25, deadline=None)
@given(st.integers(2, 20), st.integers(1, 25))
def test_players_start_in_their_half_and_off_the_dim_strip(east, lanterns):
    floor = floor_in(LANTERNS, {"east": east, "west": 3})
    strip = floor.areas_of("dim strip", "east")[0].rectangle
    half = floor.half_of("east")
    assert half is not None
    assert len(floor.players_of("east")) == east
    for player in floor.players_of("east"):
        assert half.holds(player.x, player.y, player.radius)
        assert strip.distance_m(player.x, player.y) >= player.radius - 1e-6


@settings(max_examples=25, deadline=None)
@given(st.integers(1, 14), st.integers(1, 6), st.sampled_from(PATTERNS), st.sampled_from(ON_COURT[2:4]))
def test_mirrored_sides_lie_mirrored(players, cones, how, where):
    name = "cone" if cones == 1 else "cones"
    floor = floor_in(
        halved(kit=f"{cones} {name} for each side", setup=f"cones {where}, {how}"), {"east": players, "west": players}
    )
    east = {(item.name, round(item.x, 6), round(item.y, 6)) for item in floor.items if item.side == "east"}
    west = {(item.name, round(18 - item.x, 6), round(item.y, 6)) for item in floor.items if item.side == "west"}
    assert east == west
    assert len(east) == players + cones


def test_a_line_too_short_says_by_how_much():
    game = halved(
        court="18 m by 4 m",
        kit="20 towers for each side, like a box",
        setup="towers on the back line of their side, evenly spaced",
    )
    floor = floor_in(game, {"east": 2, "west": 2}, {"box": (0.4, 0.3)})
    (problem,) = floor.problems
    numbers = dict(problem.numbers)
    assert numbers["short_m"] == pytest.approx(20 * 0.4 + 19 * 0.15 - 4)
    assert numbers["wanted"] == 40
    assert 0 < numbers["placed"] < 40
    assert "6.8 m more" in problem.title or "6.9 m more" in problem.title
    assert "of east (and likewise of west)" in problem.title


def test_sizes_come_from_what_the_kit_is_like():
    floor = floor_in(LANTERNS, {"east": 2, "west": 2}, {"skittle": (0.1, 0.3)})
    assert {(item.width_m, item.height_m) for item in floor.items_of("lantern")} == {(0.1, 0.3)}


@pytest.mark.parametrize("text", [HOME_BASES, FOUR_CORNERS, FAR_BENCH])
def test_games_of_other_shapes_fit(text):
    game = game_of(text)
    floor = floor_in(game, {side.name: side.least for side in game.sides})
    assert not floor.problems
    assert not overlapping(floor)
    boxes = [area.rectangle for area in floor.areas]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].overlaps(pair[1])]
    for area in floor.areas:
        assert area.rectangle.overlaps(floor.court) != (area.kind in ("bench", "queue"))


def test_players_are_put_in_every_base_and_nobody_in_the_den():
    game = game_of(HOME_BASES)
    floor = floor_in(game, {"everyone": 12})
    bases = [area.rectangle for area in floor.areas_of("home base")]
    assert [sum(base.holds(p.x, p.y) for p in floor.players_of()) for base in bases] == [3, 3, 3, 3]
    den = floor.areas_of("den circle")[0].rectangle
    assert all(den.holds(cone.x, cone.y, cone.radius) for cone in floor.items_of("cone"))


def test_a_bench_lies_behind_the_line_of_its_side_whatever_its_name():
    game = game_of(FAR_BENCH)
    floor = floor_in(game, full(game))
    assert floor.areas_of("far bench", "east")[0].rectangle.right <= 0
    assert floor.areas_of("far bench", "west")[0].rectangle.left >= 18
    for name in ("own", "ferry"):
        renamed = game_of(FAR_BENCH.replace("far bench", f"{name} bench"))
        boxes = [area.rectangle for area in floor_in(renamed, full(renamed)).areas]
        assert boxes == [area.rectangle for area in floor.areas]


def test_a_pass_goes_to_the_bench_that_the_line_names():
    game = game_of(FAR_BENCH)
    [aim] = {
        attempt.aim
        for offer in resolved(game).play.offers
        if offer.by == players_of("east")
        for attempt in offer.attempts
        if isinstance(attempt.aim, ToMate)
    }
    far = reached(game, floor_in(game, full(game)), players_of("east"), aim).metres
    assert far == pytest.approx(18 + 0.3 - 8)


def test_things_may_lie_on_other_things():
    game = halved(
        kit="3 cones for each side\n6 tennis balls", setup="cones in their half, staggered\ntennis balls on the cones"
    )
    floor = floor_in(game, {"east": 4, "west": 4})
    cones = {(cone.x, cone.y) for cone in floor.items_of("cone")}
    assert {(ball.x, ball.y) for ball in floor.items_of("tennis ball")} == cones
    assert not overlapping(floor)

"""The floor plan of every library game: inside its sheet, to scale, with the distances of the floor."""

from __future__ import annotations

from itertools import combinations

import pytest
from drawn_games import NAMES, laid_out, lanterns, library_game
from hypothesis import given, settings
from hypothesis import strategies as st

from compose.draw.plan.hall import hall_seen
from compose.draw.plan.plan import plan_of
from compose.draw.plan.small import small_plan
from compose.draw.plan.throws import metres
from compose.draw.signs.labelling import box_of, gap
from compose.draw.signs.palette import NOBODY
from compose.draw.signs.shapes import Disc, Drawing, Label, Lines, Polygon
from compose.draw.signs.symbols import symbol
from compose.staging.floor.distance import reach
from compose.staging.floor.throws import throws
from compose.staging.floor.values import FloorItem, Rectangle
from compose.staging.laid_out import laid_out as at_its_place
from compose.staging.resolved import resolved
from grammar.core.play import AtThing
from grammar.core.values import PLAIN, KindId, Population, SideId, Thing
from library.load import halls

HALLS = (None, "Fellgate school sports hall", "Tarn Head school hall")


def covered(drawing: Drawing) -> Rectangle:
    """The rectangle around all shapes, strokes included."""
    around = drawing.box.grown(-1e9)
    for shape in drawing.shapes:
        match shape:
            case Label():
                box = box_of(shape)
            case Disc():
                box = Rectangle(shape.x, shape.y, shape.x, shape.y).grown(shape.radius + shape.ink.width_m / 2)
            case Polygon() | Lines():
                points = shape.points if isinstance(shape, Polygon) else [p for run in shape.runs for p in run]
                if not points:
                    continue
                xs, ys = [x for x, _y in points], [y for _x, y in points]
                box = Rectangle(min(xs), min(ys), max(xs), max(ys)).grown(shape.ink.width_m / 2)
        around = around.joined(box)
    return around


def words(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, Label)]


@pytest.mark.sample(60)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("hall", HALLS)
@pytest.mark.parametrize("legend", ["below", "beside"])
def test_everything_is_on_the_sheet(name, hall, legend):
    game = library_game(name)
    drawing = plan_of(game, laid_out(game), halls()[hall] if hall else None, legend=legend, letters=1.2)
    inside, box = covered(drawing), drawing.box
    assert box.joined(inside) == box, (box, inside)


@pytest.mark.parametrize("name", NAMES)
def test_everything_is_on_the_small_picture(name):
    drawing = small_plan(library_game(name), laid_out(library_game(name)))
    inside, box = covered(drawing), drawing.box
    assert box.joined(inside) == box, (box, inside)


@pytest.mark.parametrize("name", NAMES)
def test_names_of_the_kit_and_the_sides_are_in_the_legend(name):
    game = library_game(name)
    said = words(plan_of(game, laid_out(game)))
    for line in game.kit:
        assert any(line.name in text or line.plural in text for text in said), line.name
    for side in game.sides:
        assert any(text.startswith(f"{side.name}: ") for text in said), side.name
    assert not any(text.endswith("…") for text in said)


def test_the_distance_on_the_plan_is_the_distance_of_the_floor():
    game = lanterns()
    floor = laid_out(game)
    aim = AtThing(Thing(KindId("lantern"), SideId("south")))
    far = reach(floor, resolved(game), Population(SideId("north"), PLAIN), aim).metres
    assert f"{far:.2f}" == "9.85"
    assert "9.9 m to lanterns" in words(plan_of(game, floor))


def test_a_distance_that_the_rules_give_is_shown():
    game = lanterns(play="players roll a foam ball at the lanterns of the other side, from 4 m away")
    assert any(text.startswith("4.0 m") for text in words(plan_of(game, laid_out(game))))


def test_the_hall_shows_its_door_its_north_and_the_clear_floor():
    game = lanterns()
    floor, hall = laid_out(game), halls()["Fellgate school sports hall"]
    said = words(plan_of(game, floor, hall))
    assert said.count("door") == len(hall.doors)
    assert "N" not in said  # a side is called north, and lies where the court does
    other = library_game("heron-and-pike")
    assert "N" in words(plan_of(other, laid_out(other), hall))
    clear = (hall.width_m.usual - game.court_m[1]) / 2
    assert said.count(f"{clear:.1f} m") == 2


def test_the_court_lies_in_the_middle_of_the_hall():
    game = lanterns()
    box = hall_seen(laid_out(game), halls()["Fellgate school sports hall"]).walls
    assert box.centre == pytest.approx((9.0, 4.5))
    assert (box.length, box.width) == pytest.approx((26, 14))


def test_the_same_game_gives_the_same_drawing():
    game = lanterns()
    assert plan_of(game, laid_out(game)) == plan_of(game, laid_out(game))


@settings(max_examples=30, deadline=None)
@given(st.floats(4, 40), st.floats(3, 25), st.integers(1, 30), st.sampled_from(HALLS), st.floats(1.0, 1.5))
def test_any_size_of_court_stays_on_the_sheet(length, width, players, hall, letters):
    game = lanterns(court=f"{length:.2f} m by {width:.2f} m")
    floor = at_its_place(game, {"north": players, "south": 2})
    drawing = plan_of(game, floor, halls()[hall] if hall else None, letters=letters)
    inside = covered(drawing)
    assert drawing.box.joined(inside) == drawing.box


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("hall", HALLS[:2])
@pytest.mark.parametrize("letters", [1.0, 1.35])
def test_no_words_lie_over_other_words(name, hall, letters):
    game = library_game(name)
    drawing = plan_of(game, laid_out(game), halls()[hall] if hall else None, legend="beside", letters=letters)
    labels = [shape for shape in drawing.shapes if isinstance(shape, Label)]
    for one, other in combinations(labels, 2):
        assert gap(box_of(one), box_of(other)) > -0.3 * one.size_m, (one.text, other.text)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("letters", [1.0, 1.9])
def test_no_arrow_runs_through_a_distance_and_each_is_told(name, letters):
    """Beside the arrow or, where there is no room, in the legend."""
    game = library_game(name)
    drawing = plan_of(game, laid_out(game), letters=letters)
    runs = [run for shape in drawing.shapes if isinstance(shape, Lines) and shape.ink.dash for run in shape.runs]
    labels = [shape for shape in drawing.shapes if isinstance(shape, Label)]
    told = {far: [label for label in labels if label.text.startswith(far)] for far in distances(game)}
    assert all(told.values()), told
    for label in (each for found in told.values() for each in found if each.halo):
        for (x, y), (right, top) in runs:
            line = Rectangle(min(x, right), min(y, top), max(x, right), max(y, top))
            assert gap(box_of(label), line) > -0.25 * label.size_m, (label.text, line)


def distances(game):
    return {metres(throw.reach.metres) for throw in throws(resolved(game), laid_out(game))}


def test_a_box_has_a_sign_of_its_own():
    """On the floor and in the legend; what is higher than wide is a pin."""

    def points(width_m, height_m):
        item = FloorItem("box", "target", None, 0.0, 0.0, width_m, height_m)
        return symbol(item, NOBODY, 0.3, 0)[0].points

    assert points(0.4, 0.3) == points(0.3, 0.3) != points(0.1, 0.3) == points(0.2, 0.05)
    peats = library_game("peat-cutters")
    drawn = plan_of(peats, laid_out(peats)).shapes
    corners = [len(shape.points) for shape in drawn if isinstance(shape, Polygon)]
    assert 10 not in corners, "no pin is left of the boxes"

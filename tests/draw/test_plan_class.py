"""The plan of a class: all courts, each where it lies in the hall, and the hall turned where they lie across it."""

from __future__ import annotations

import pytest
from attrs import evolve
from drawn_games import NAMES, library_game

import library
from compose.draw.plan.of_class import class_described, class_plan, class_plan_on_card
from compose.draw.signs.labelling import box_of
from compose.draw.signs.shapes import Label
from compose.staging.floor.values import Rectangle
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.staging.turned import WALL, turned_hall

HALLS = (None, "Tarn Head school hall", "double hall 45 by 22", "gymnastics room 20 by 10")
INSIDE_M = 1e-6


def staged(name, pupils, hall=None):
    group = evolve(some_class(pupils), hall=library.halls()[hall] if hall else None)
    return stage(library_game(name), library.norms(), library.kit_names(), group)


@pytest.mark.parametrize("name", ["toll-stone", "beck-gates"])
@pytest.mark.parametrize("pupils", [9, 17, 24, 27])
@pytest.mark.parametrize("hall", HALLS)
@pytest.mark.parametrize("large", [False, True, None])
def test_every_court_is_drawn_with_its_number(name, pupils, hall, large):
    staging = staged(name, pupils, hall)
    if not staging.courts:
        assert pupils == 9 and name == "beck-gates"
        return
    look = {} if large is None else {"large": large}
    drawing = (class_plan if large is None else class_plan_on_card)(library_game(name), staging, **look)
    numbers = [shape for shape in drawing.shapes if isinstance(shape, Label) and shape.bold and shape.text.isdigit()]
    assert len(numbers) == (len(staging.courts) if len(staging.courts) > 1 else 0)
    for shape in drawing.shapes:
        if isinstance(shape, Label):
            assert drawing.box.joined(box_of(shape)) == drawing.box
    assert f"{len(staging.courts)} courts" in drawing.description or len(staging.courts) == 1


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("hall", (None, "triple hall 45 by 27"))
def test_no_words_of_a_plan_are_cut(name, hall):
    staging = staged(name, 24, hall)
    if staging.courts:
        drawing = class_plan(library_game(name), staging)
        words = [shape for shape in drawing.shapes if isinstance(shape, Label)]
        assert not [each.text for each in words if each.text.endswith("\u2026")]
        assert all(drawing.box.joined(box_of(each)) == drawing.box for each in words)


@pytest.mark.sample(60)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("pupils", [9, 17, 24, 27, 32])
@pytest.mark.parametrize("hall", HALLS)
def test_courts_lie_apart_and_inside_the_hall_that_they_fit_in(name, pupils, hall):
    staging = staged(name, pupils, hall)
    boxes = [court.box for court in staging.courts]
    for order, one in enumerate(boxes):
        assert not any(one.overlaps(other) for other in boxes[:order])
        extent = staging.courts[order].floor.extent
        along, across = (extent.width, extent.length) if staging.courts[order].turned else (extent.length, extent.width)
        assert (one.length, one.width) == (pytest.approx(along), pytest.approx(across))
    if staging.room is not None and staging.room.fits:
        size = staging.room.hall
        around = Rectangle(0.0, 0.0, size.length_m.usual, size.width_m.usual).grown(INSIDE_M)
        assert all(around.joined(box) == around for box in boxes)


def test_a_turned_hall_is_the_same_hall():
    """Four turns bring everything back, and each wall to the next."""
    hall = library.halls()["Tarn Head school hall"]
    now = hall
    for _ in range(4):
        now = turned_hall(now)
    assert [door.side for door in now.doors] == [door.side for door in hall.doors]
    for one, other in zip(now.obstacles, hall.obstacles, strict=True):
        assert (one.x_m, one.y_m, one.length_m, one.width_m) == pytest.approx(
            (other.x_m, other.y_m, other.length_m, other.width_m)
        )
    assert sorted(WALL.values()) == sorted(WALL)
    once = turned_hall(hall)
    assert (once.length_m, once.width_m) == (hall.width_m, hall.length_m)
    assert [door.side for door in once.doors] == [WALL[door.side] for door in hall.doors]


def test_a_court_across_the_hall_is_drawn_along_the_turned_hall():
    """On a court that is wider than long, in a hall of 18 m by 9.5 m, the north arrow points to the right."""
    narrow = evolve(library.halls()["Tarn Head school hall"], width_m=library.halls()["double hall 45 by 22"].length_m)
    group = evolve(some_class(24), hall=narrow)
    staging = stage(library_game("millrace-roll"), library.norms(), library.kit_names(), group)
    assert staging.court.turned
    drawing = class_plan(library_game("millrace-roll"), staging)
    (north,) = (shape for shape in drawing.shapes if isinstance(shape, Label) and shape.text == "N")
    assert north.anchor == "start"
    assert "18 m by 45 m" in class_described(library_game("millrace-roll"), staging)


def test_no_north_arrow_contradicts_a_side_called_north():
    group = evolve(some_class(24), hall=library.halls()["double hall 45 by 22"])
    for name, arrows in (("lantern-row", 0), ("millrace-roll", 1)):
        staging = stage(library_game(name), library.norms(), library.kit_names(), group)
        drawing = class_plan(library_game(name), staging)
        labels = [shape.text for shape in drawing.shapes if isinstance(shape, Label)]
        assert (labels.count("N"), labels.count("north wall")) == (arrows, 1 - arrows), name

"""Words on the plan of a class lie over no other words and over no sign of the legend, whatever stands in the hall."""

from __future__ import annotations

from itertools import combinations

import pytest
from drawn_games import NAMES, library_game

import library
from compose.draw.plan.of_class import class_plan_on_card
from compose.draw.signs.labelling import box_of, gap
from compose.draw.signs.palette import DARK
from compose.draw.signs.shapes import Disc, Label, Polygon
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.modifiers.of_library import library_modifiers
from compose.staging.class_from_sheet import class_of
from compose.staging.floor.values import Rectangle
from compose.staging.school_class import SchoolClass
from compose.staging.staging import stage
from grammar.parse import parse

DOOR = "door in the east wall, 2 m from its south end"
HALLS = (
    (
        "hall 15 by 12 m",
        "stage along the north wall, 15 m by 2 m, 0 m from its west end",
        "door in the east wall, 2 m from its south end",
    ),
    ("hall 24 by 14 m", "door in the north wall, 3 m from its west end"),
    (
        "hall 20 by 22 m",
        "stage along the west wall, 8 m by 2 m, 6 m from its south end",
        "door in the south wall, 4 m from its west end",
    ),
)


def group_in(hall: tuple[str, ...]) -> SchoolClass:
    text = "\n  ".join(("class Fell Class", "class of 22", *hall))
    read = parse(text + "\n")
    assert read.value is not None, [each.title for each in read.findings]
    found = class_of(read.value.classes[0], library.halls(), library.kit_categories())
    assert found.value is not None
    return found.value


@pytest.mark.sample(30)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("hall", HALLS, ids=[each[0] for each in HALLS])
@pytest.mark.parametrize("shorter", [False, True])
def test_no_words_of_a_class_plan_lie_over_others(name: str, hall: tuple[str, ...], shorter: bool) -> None:
    game = library_game(name)
    if shorter:
        (chosen,) = [each for each in library_modifiers() if each.name == "shorter court"]
        made = remix(game, [Use(chosen, {each.parameter: each.usually for each in chosen.takes})], library.kit_names())
        game = made.value.game if made.value is not None else game
    staging = stage(game, library.norms(), library.kit_names(), group_in(hall))
    if not staging.courts or staging.room is None or not staging.room.fits:
        return
    drawing = class_plan_on_card(game, staging)
    labels = [shape for shape in drawing.shapes if isinstance(shape, Label)]
    for one, other in combinations(labels, 2):
        assert gap(box_of(one), box_of(other)) > -0.3 * one.size_m, (one.text, other.text)
    assert any(each.text in ("N", "north wall") and each.colour == DARK for each in labels)
    for north in (each for each in labels if each.text in ("N", "north wall") and each.colour == DARK):
        for shape in drawing.shapes:
            if isinstance(shape, Disc):
                box = Rectangle(shape.x, shape.y, shape.x, shape.y).grown(shape.radius)
            elif isinstance(shape, Polygon) and shape.points and len(shape.points) != 3:
                xs, ys = zip(*shape.points, strict=True)
                box = Rectangle(min(xs), min(ys), max(xs), max(ys))
            else:
                continue
            if box.length < 4 * north.size_m:
                assert gap(box_of(north), box) > -0.1 * north.size_m

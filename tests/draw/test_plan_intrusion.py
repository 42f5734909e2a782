"""A plan in a hall too small for it: what intrudes is on the drawing itself, where it is and how deep."""

from __future__ import annotations

import pytest
from drawn_games import NAMES, library_game

import library
from compose.draw.plan.hall import hall_seen
from compose.draw.plan.intrusion import intrusions
from compose.draw.plan.of_class import class_described, class_plan
from compose.draw.plan.plan import plan_of
from compose.draw.signs.labelling import box_of, gap
from compose.draw.signs.palette import WARNING
from compose.draw.signs.shapes import Label
from compose.staging.class_from_sheet import class_of
from compose.staging.floor.values import Rectangle
from compose.staging.laid_out import laid_out
from compose.staging.staging import stage
from compose.staging.teams import teams_of
from compose.telling.wording import wording_of
from grammar.hall_told import hall_told
from grammar.parse import parse
from library import Hall, own_hall

SMALL = """hall Small Hall
  the hall is 15 m by 12 m
  stage along the east wall, 6 m by 1.2 m, 3 m from its south end
  post, 20 cm by 20 cm, 7.4 m from the west wall and 11.8 m from the south wall
"""
POSTS = """hall Post Hall
  the hall is 20 m by 12 m
  post, 20 cm by 20 cm, 4 m from the west wall and 6 m from the south wall
  post, 20 cm by 20 cm, 10 m from the west wall and 2 m from the south wall
  post, 20 cm by 20 cm, 16 m from the west wall and 6 m from the south wall
"""
HALO_M = 0.1  # of the rim of words, which has room for letters that hang down
TOUCHES_M = 0.05  # of letters and a thing: less is seen as beside it


def hall(text: str) -> Hall:
    rules = parse(text).value
    assert rules is not None
    found = own_hall(hall_told(rules.halls[0]), rules.halls[0].title).value
    assert found is not None
    return found


def words_in(drawing: object) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, Label) and shape.colour == WARNING]  # type: ignore[attr-defined]


def test_what_intrudes_by_hand() -> None:
    """Lantern Row is 18 m by 9 m, in the middle of 15 m by 12 m: 1.5 m over each end; the stage begins at 13.8 m of
    the hall, 12.3 m of the hall's middle, and is 1.2 m deep; the post stands at the north wall, outside the court."""
    floor = laid_out(library_game("lantern-row"), {"north": 6, "south": 6})
    found = list(intrusions(floor, (floor.extent,), hall_seen(floor, hall(SMALL))))
    assert [(each.name, pytest.approx(each.metres)) for each in found] == [("", 1.5), ("", 1.5), ("stage", 1.2)]
    assert found[0].box == Rectangle(0, 0, 1.5, 9) and found[1].box == Rectangle(16.5, 0, 18, 9)
    assert found[2].box.left == pytest.approx(1.5 + 13.8) and found[2].box.bottom == pytest.approx(3 - 1.5)


def test_what_intrudes_is_on_the_drawing_and_in_its_words() -> None:
    game = library_game("lantern-row")
    floor = laid_out(game, {"north": 6, "south": 6})
    drawing = plan_of(game, floor, hall(SMALL))
    assert sorted(words_in(drawing)) == ["1.5 m beyond the wall", "1.5 m beyond the wall", "stage: 1.2 m in the way"]
    assert "1.5 m beyond the wall." in drawing.description
    french = plan_of(game, floor, hall(SMALL), wording=wording_of("fr"))
    assert any("au-delà du mur" in words for words in words_in(french))


@pytest.mark.parametrize("size", ["24 m by 15 m", "18 m by 9 m"])
def test_hall_that_is_large_enough_has_nothing_in_the_way(size: str) -> None:
    game = library_game("lantern-row")
    floor = laid_out(game, {"north": 6, "south": 6})
    assert words_in(plan_of(game, floor, hall(f"hall A\n  the hall is {size}\n"))) == []


def test_lines_on_the_floor_are_drawn_and_told() -> None:
    game = library_game("lantern-row")
    floor = laid_out(game, {"north": 6, "south": 6})
    bare, lined = (plan_of(game, floor, library.halls()["single hall 27 by 15"]), "")
    assert "Lines on its floor: volleyball court." in bare.description and not lined
    without = plan_of(game, floor, hall("hall A\n  the hall is 27 m by 15 m\n"))
    assert len(bare.shapes) > len(without.shapes) and "Lines" not in without.description


def test_courts_side_by_side_are_looked_at_one_by_one() -> None:
    text = f"class Six\n  class of 12\n  the hall is 8 m by 14 m\n  {SMALL.splitlines()[2].strip()}\n"
    rules = parse(text).value
    assert rules is not None
    group = class_of(rules.classes[0], library.halls(), library.kit_categories()).value
    assert group is not None
    game = library_game("toll-stone")
    staging = stage(game, library.norms(), library.kit_names(), group, teams_of(game, 12))  # more than the hall holds
    assert len(staging.courts) > 1
    drawing = class_plan(staging.game, staging)
    assert words_in(drawing)
    told = class_described(staging.game, staging)
    assert all(words in told for words in words_in(drawing))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "fr"])
def test_no_name_of_what_is_in_the_way_lies_over_a_thing_or_a_player(name: str, language: str) -> None:
    game = library_game(name)
    floor = laid_out(game, {side.name: (side.least + side.most + 1) // 2 for side in game.sides})
    drawing = plan_of(game, floor, hall(POSTS), wording=wording_of(language))
    names = [box_of(each) for each in drawing.shapes if isinstance(each, Label) and each.colour == WARNING]
    over = [(item.name, item.x, item.y) for item in floor.items for box in names if gap(box, item.box) < -TOUCHES_M]
    assert not over


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["en", "fr"])
def test_no_words_on_a_plan_lie_over_a_thing_or_a_player(name: str, language: str) -> None:
    """With the usual number of players and with the most; a single letter is the mark on a player with a task."""
    game = library_game(name)
    for of_side in ("usual", "most"):
        many = {side.name: side.most if of_side == "most" else (side.least + side.most + 1) // 2 for side in game.sides}
        floor = laid_out(game, many)
        words = [each for each in plan_of(game, floor, wording=wording_of(language)).shapes if isinstance(each, Label)]
        boxes = [(each.text, box_of(each)) for each in words if len(each.text) > 1]
        assert boxes
        over = [(text, item.name) for item in floor.items for text, box in boxes if gap(item.box, box) < -HALO_M]
        assert not over, of_side

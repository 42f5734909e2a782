"""One list of what has to be there speaks on the card, in the lesson and for a class: over all courts, benches too."""

from __future__ import annotations

import pytest
from attrs import evolve

import library
from compose.draw.card.of_remix import USUAL_LOOK, card_of_remix
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.modifiers.remix import Remix
from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard, some_class
from compose.staging.staging import Staging, stage
from compose.telling.for_class import class_lines
from compose.telling.needed import kit_lines
from compose.telling.rules import rules_of
from compose.telling.sentences import sentence
from compose.telling.wording import ENGLISH, Wording, wording_of
from grammar.span import nowhere
from library.load import game_paths
from tests.interpreter.sheets import library_game

NAMES = tuple(path.stem for path in game_paths())
LANGUAGES = (ENGLISH, wording_of("fr"))
PUPILS = (27, 24, 12)


def staged(name: str) -> Staging:
    """The game for a class that has a name, of as many as can play it of a few sizes."""
    game = library_game(name)
    for pupils in PUPILS:
        group = evolve(some_class(pupils), name="Fell Class")
        staging = stage(game, library.norms(), library.kit_names(), group)
        if not staging.refused:
            return staging
    raise AssertionError(name)


def lists(staging: Staging, wording: Wording) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The list of the card and that of the lesson."""
    made = Remix(staging.game, staging.game)
    card = card_of_remix(made, staging, evolve(USUAL_LOOK, wording=wording)).section(wording.say("You need"))
    table = lesson_table([Planned(staging.game, staging, 3.0)], library.norms())
    lesson = lesson_card(table, "Monday", wording).section(wording.say("Kit of the whole lesson"))
    assert card is not None and lesson is not None
    return card.lines, lesson.lines


@pytest.mark.parametrize("name", NAMES)
def test_card_and_lesson_have_one_list(name: str) -> None:
    for wording in LANGUAGES:
        card, lesson = lists(staged(name), wording)
        assert card == lesson


@pytest.mark.parametrize("name", NAMES)
def test_on_one_court_the_list_is_that_of_a_card_for_nobody_in_particular(name: str) -> None:
    staging = staged(name)
    if len(staging.courts) > 1 or any(line.per_player for line in staging.game.kit):
        return
    for wording in LANGUAGES:
        of_class = [sentence(line) for line in kit_lines(staging, wording)]
        assert of_class == [sentence(line) for line in rules_of(resolved(staging.game), wording).kit]


def test_benches_are_counted_over_all_courts_and_told_by_every_list() -> None:
    staging = staged("harvest-kettles")
    assert len(staging.courts) == 3 and staging.benches is not None
    assert staging.benches.needed == 3
    for lines in lists(staging, ENGLISH):
        assert "3 benches (shed bench)" in lines
        assert "9 carrots (3 on each court, like a beanbag)" in lines
    (also,) = (line for line in class_lines(staging) if line.startswith("Also needed: "))
    assert also.startswith("Also needed: 3 benches (shed bench); bibs or bands")


def test_what_no_kit_lists_is_set_as_french_is() -> None:
    (also,) = (line for line in class_lines(staged("harvest-kettles"), LANGUAGES[1]) if "bancs" in line)
    assert also.startswith("À prévoir aussi\u00a0: 3 bancs (banc de la remise)\u00a0; chasubles")


def test_benches_that_the_kit_lists_are_asked_for_once() -> None:
    staging = staged("ferry-bench")
    assert staging.benches is None
    assert [line for line in kit_lines(staging) if "bench" in line] == ["4 gangways (2 for each side, like a bench)"]


def test_a_lesson_of_several_games_has_benches_bibs_and_tape() -> None:
    games = [staged(name) for name in ("harvest-kettles", "lantern-row", "burr-toss")]
    table = lesson_table([Planned(each.game, each, 3.0) for each in games], library.norms())
    kit = lesson_card(table, "Monday").section("Kit of the whole lesson")
    assert kit is not None
    assert "3 benches (Harvest Kettles: 3, Burr Toss: 1)" in kit.lines
    assert "10 lanterns, like a plastic pin (Lantern Row: 10)" in kit.lines
    assert kit.lines[-2:] == ("Bibs or bands to tell the sides apart", "Tape or cones to mark the lines")


def of_things(name: str, **things: int) -> Staging:
    """The game for 24 pupils with so many of each thing and nothing else."""
    cupboard = tuple(InCupboard(what, number, what, nowhere()) for what, number in things.items())
    group = evolve(some_class(24), cupboard=cupboard)
    return stage(library_game(name), library.norms(), library.kit_names(), group)


@pytest.mark.parametrize(("cones", "marks"), [(10, "tape to"), (13, "tape to"), (14, "tape or cones"), (0, "tape to")])
def test_cones_that_are_lanterns_mark_no_lines(cones: int, marks: str) -> None:
    """Ten of them are lanterns: four at least have to be left, one for each corner."""
    staging = of_things("lantern-row", **{"foam ball": 12, "cone": cones})
    assert any(line.startswith(marks) for line in kit_lines(staging))
    (also,) = (line for line in class_lines(staging) if line.startswith("Also needed: "))
    assert marks in also


def test_all_that_lie_in_the_cupboard_are_there() -> None:
    """Twelve balls are there though eight are needed; those that two lines need are given out once."""
    lines = list(kit_lines(of_things("lantern-row", **{"foam ball": 12})))
    assert "8 foam balls, 12 there" in lines
    staging = of_things("heron-and-pike", **{"foam ball": 9, "plastic pin": 6})
    there = {row.line.name: row.in_cupboard for row in staging.kit}
    assert (there["foam ball"], there["red ball"], there["stone"]) == (8, 0, 6), "one of the nine is the red ball"


def test_in_one_side_those_with_a_task_wear_bibs() -> None:
    lines = list(kit_lines(staged("otter-reeds")))
    assert "bibs or bands for otters" in lines
    table = lesson_table([Planned(each.game, each, 3.0) for each in [staged("otter-reeds")] * 2], library.norms())
    kit = lesson_card(table, "Monday").section("Kit of the whole lesson")
    assert kit is not None and kit.lines.count("Bibs or bands for otters") == 1


def test_what_stands_in_is_named_where_it_is_laid_out() -> None:
    staging = of_things("lantern-row", **{"foam ball": 12, "cone": 10})
    table = lesson_table([Planned(staging.game, staging, 3.0)], library.norms())
    first = lesson_card(table, "Monday").section("Lay out first")
    assert first is not None and "10 lanterns (10 cones can stand in)" in first.lines

"""The kit of a lesson: shared by its games, put away and brought out between them; and how each is set up."""

from __future__ import annotations

from attrs import evolve
from drawn_games import lanterns, library_game
from planned_games import TWO, planned, planned_game

import library
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, kit_over, lesson_table
from compose.staging.school_class import InCupboard, some_class
from compose.staging.staging import stage
from compose.staging.teams import Teams
from grammar.core.declared import Odd
from grammar.span import nowhere


def test_things_that_are_alike_are_shared():
    lantern, heron = planned("lantern-row"), planned("heron-and-pike")
    kit = {each.name[1]: each for each in kit_over([lantern, heron])}
    assert kit["foam balls"].by_game == (8, 6)
    assert kit["foam balls"].most == 8
    assert kit["plastic pins"].by_game == (10, 6)
    assert kit["plastic pins"].names == (("lantern", "lanterns"), ("stone", "stones"))
    assert kit["red ball" if "red ball" in kit else "red balls"].games == 1


def test_two_kinds_of_one_game_are_not_shared_with_each_other():
    game = lanterns(kit="2 posts for each side, like a skittle", set_up="posts on the middle line")
    kit = kit_over([planned_game(game)])
    assert {each.name[1]: each.most for each in kit if each.line.like == "skittle"} == {"lanterns": 10, "posts": 4}


def test_change_overs_tell_what_to_put_away():
    card = lesson_card(
        lesson_table([planned(name, minutes=45) for name in ("lantern-row", "heron-and-pike")], library.norms()),
        "Monday",
    )
    second = card.section("2. Heron and Pike").lines
    assert "6 lanterns now serve as stones." in second
    assert any(line.startswith("Put away 2 foam balls and 4 lanterns") for line in second)
    assert any(line.startswith("Bring out 1 red ball") for line in second)


def test_what_stands_in_for_two_things_is_one_thing_and_stays_out():
    """Twelve cones are ten lanterns first and ten slates then; nobody brings out what lies there already."""
    cupboard = (InCupboard("cone", 12, "cone", nowhere()), InCupboard("foam ball", 9, "foam ball", nowhere()))
    group = evolve(some_class(24), cupboard=cupboard)
    staged = [(library_game(name), Teams(({"north": 12, "south": 12},), 0, Odd.UNSAID)) for name in TWO[:1]]
    staged += [(library_game(TWO[1]), Teams(({"herons": 12, "pikes": 12},), 0, Odd.UNSAID))]
    games = [
        Planned(game, stage(game, library.norms(), library.kit_names(), group, teams), 4.0) for game, teams in staged
    ]
    kit = {each.name: each for each in kit_over(games)}
    assert kit["cone", "cones"].names == (("lantern", "lanterns"), ("stone", "stones"))
    assert kit["cone", "cones"].by_game == (10, 6)


def test_every_game_says_how_it_is_set_up():
    card = lesson_card(lesson_table([planned(name, minutes=45) for name in TWO], library.norms()), "Monday")
    (set_up,) = [line for line in card.section("1. Lantern Row").lines if line.startswith("Court ")]
    assert "Lanterns on the back line of their side, evenly spaced. 4 foam balls in each half." in set_up

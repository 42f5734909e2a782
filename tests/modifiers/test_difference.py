"""How games differ, in words."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from mixtures import ROW, game_of, library_games, made, mixed, row, use
from strategies import uses

from compose.modifiers.difference.difference import PARTS, differences
from compose.modifiers.difference.same_game import same_game
from compose.modifiers.modifier import Use
from grammar.game import Game

UNLIKE = game_of(ROW.replace(", mirrored", "\n      role guard: 2 players of each side, nobody aims at them"))
any_game = st.sampled_from([*library_games().values(), row(), UNLIKE])


def told(one: Game, other: Game) -> dict[str, list[str]]:
    """The differences by their headings."""
    found: dict[str, list[str]] = {}
    for each in differences(one, other):
        found.setdefault(each.heading, []).append(each.words)
    return found


@pytest.mark.parametrize(
    ("name", "values", "heading", "words"),
    [
        ("add balls", {"n": 3}, "kit", "11 foam balls in place of 8"),
        ("bigger targets", {"size": 150}, "kit", "the lanterns are larger: 150 % of their size"),
        ("low targets", {}, "kit", "the lanterns are like a low target, not like a plastic pin"),
        ("ring goal", {}, "kit", "besides, 1 red ball"),
        ("shorter court", {"part": 75}, "space", "a court of 13.5 m by 9 m in place of 18 m by 9 m, 25 % less floor"),
        ("deeper strips", {"size": 150}, "space", "the dim strip is 3 m deep, not 2 m"),
        ("out to a task", {}, "space", "a new queue: task queue: beside each half"),
        ("uneven sides", {"n": 2}, "players", "south: 4 to 12 players in place of 6 to 14 players"),
        ("guards", {"n": 2}, "players", "a new role, guard: 2 players of each side"),
        ("two games side by side", {}, "players", "up to 2 games side by side"),
        ("roll instead", {}, "skills", "players roll where they threw overarm"),
        ("for the youngest", {}, "skills", "for ages 6 to 9, not 8 to 12"),
        ("walking play", {}, "play", "new: attempts take 150 % as long"),
        (
            "nobody is out",
            {},
            "what follows",
            "when a player is hit: play goes on, where before that player waits in the long queue",
        ),
        ("best of rounds", {"n": 5}, "finish", "new: best of 5 rounds"),
        ("below the shoulder", {}, "care", "new: Aim below the shoulder."),
    ],
)
def test_each_kind_of_difference_is_told(name: str, values: dict[str, float], heading: str, words: str) -> None:
    assert words in told(row(), made(row(), use(name, **values)))[heading]


def test_way_back_is_told_the_other_way_round() -> None:
    remixed = made(row(), use("add balls", n=3), use("out to a task"), use("guards"))
    back = told(remixed, row())
    assert "8 foam balls in place of 11" in back["kit"]
    assert "no task queue" in back["space"]
    assert "the role of guard is gone" in back["players"]


PAIR = re.compile(r"^(.+?)(?: in place of |, not |; before: )(.+?)(?:, \d+ % (?:more|less) floor)?$")


def numbers(said: list[str]) -> list[tuple[list[str], list[str]]]:
    """Of each sentence that sets a value against another one: the numbers of what is now and of what was before."""
    pairs = (PAIR.match(words) for words in said)
    return sorted((re.findall(r"\d+", pair[1]), re.findall(r"\d+", pair[2])) for pair in pairs if pair)


@given(any_game, any_game | uses())
def test_each_way_says_what_the_other_says(one: Game, other: Game | Use) -> None:
    """What came on the one way went on the other, under the same heading, and what was so many is so many again."""
    if isinstance(other, Use):
        outcome = mixed(one, other)
        assume(outcome.value is not None)
        assert outcome.value is not None
        other = outcome.value.game
    forth, back = told(one, other), told(other, one)
    assert {heading: len(said) for heading, said in forth.items()} == {
        heading: len(said) for heading, said in back.items()
    }
    for heading, said in forth.items():
        assert numbers(said) == sorted((before, now) for now, before in numbers(back[heading]))


def test_what_is_said_of_sides_and_roles_is_told() -> None:
    assert told(row(), UNLIKE)["players"] == [
        "the sides are no longer mirrored", "a new role, guard: 2 players of each side, nobody aims at them"
    ]  # fmt: skip
    assert told(UNLIKE, row())["players"] == ["the sides are now mirrored", "the role of guard is gone"]


def test_what_is_told_of_numbers_and_areas_is_what_the_other_sheet_says() -> None:
    sized = game_of(ROW.replace("6 to 14 players", "6 players"))
    assert "north: 6 players in place of 6 to 14 players" in told(row(), sized)["players"]
    assert "north: 6 to 14 players in place of 6 players" in told(sized, row())["players"]
    guarded = game_of(ROW.replace(", nobody guards there", ""))
    [area] = told(guarded, row())["space"]
    assert area == "the dim strip is otherwise: 2 m deep, before each back line, nobody guards there"


def test_library_games_differ_in_everything() -> None:
    found = told(library_games()["lantern-row"], library_games()["sledge-road"])
    assert set(found) == {heading for heading, _ in PARTS}
    assert "a new zone: throwing zone: 2 m deep, along each side line" in found["space"]


@given(any_game, st.lists(uses(), max_size=2))
def test_no_difference_means_the_same_game_and_no_edit_goes_untold(game: Game, chosen: list[Use]) -> None:
    outcome = mixed(game, *chosen)
    if outcome.value is None:
        return
    found = differences(game, outcome.value.game)
    if same_game(game, outcome.value.game):
        assert not found
    only_head = {edit.section for edit in outcome.value.edits} <= {"head"}
    assert found or only_head or same_game(game, outcome.value.game)
    assert all(each.words and not each.words.endswith(":") for each in found)


@given(any_game, any_game)
def test_any_two_games_can_be_set_against_each_other(one: Game, other: Game) -> None:
    found = differences(one, other)
    assert bool(found) != same_game(one, other)


GUARDED = (
    "a lantern is knocked while it has at most 2 lanterns standing: it stands up again",
    "a lantern is knocked while it has at most 3 lanterns standing: it stays down",
)


def in_this_order(*rules: str) -> Game:
    """Row with these rules for lanterns, one after the other."""
    return game_of(ROW.replace("a lantern is knocked: it stays down", "\n      ".join(rules)))


def test_order_of_rules_is_told_where_the_first_that_holds_decides() -> None:
    one, other = in_this_order(*GUARDED), in_this_order(*reversed(GUARDED))
    [words] = told(one, other)["what follows"]
    assert words == f"asked first: {GUARDED[1]}; only then: {GUARDED[0]}"
    assert not differences(one, one)


def test_order_of_rules_that_write_different_things_is_told_to_change_nothing() -> None:
    points = "a lantern is knocked while it has at most 3 lanterns standing: the thrower's side scores 1 point"
    one, other = in_this_order(GUARDED[0], points), in_this_order(points, GUARDED[0])
    assert same_game(one, other)
    [words] = told(one, other)["what follows"]
    assert words == f"in another order, which changes nothing, since both hold: {points}; {GUARDED[0]}"


def test_rules_that_only_the_other_game_has_are_in_no_other_order() -> None:
    """Nor is one that always holds: it stands by itself."""
    more = "a lantern is knocked while it has 1 lantern standing: the thrower's side scores 1 point"
    always = "a ball is missed: the thrower's side scores 2 points"
    one, other = in_this_order(GUARDED[0], always), in_this_order(always, more, *GUARDED)
    said = " ".join(told(one, other)["what follows"])
    assert more in said and "in another order" not in said


def test_order_of_ends_is_told() -> None:
    end = "a side wins when the other side has no lanterns standing"
    more = "a side wins when it has 3 players in"
    one, other = (game_of(ROW.replace(end, f"{a}\n      {b}")) for a, b in ((end, more), (more, end)))
    assert told(one, other) == {"finish": [f"looked at first: {more}; only then: {end}"]}


def test_another_wording_is_no_difference() -> None:
    assert not differences(row(), game_of(ROW.replace("a lantern is knocked", "any lantern is knocked")))
    assert not differences(row(), game_of(ROW.replace("throw a foam ball", "throw any foam ball")))

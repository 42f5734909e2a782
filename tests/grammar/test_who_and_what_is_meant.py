"""Small laws of the reading: what is read alike is alike, what could be several is refused, what is advised is read."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

import library
from compose.staging.resolved import resolved
from grammar.core.values import AreaId, RoleId
from grammar.finding import Finding
from grammar.parse import parse
from grammar.resolve import resolve
from grammar.tree import GameSheet
from tests.grammar.test_values_of_the_core import ALONE, SIDES
from tests.interpreter.sheets import game_in


def findings(knocked: str = "it stays down", finish: str = "", **instead: str) -> tuple[Finding, ...]:
    """What is said of the sheet of two sides with these lines; `play`, `when` and `kit` are added to their sections."""
    return resolve(read(knocked, finish, instead), library.kit_categories()).findings


def read(knocked: str, finish: str, instead: Mapping[str, str]) -> GameSheet:
    text = SIDES
    for section, line in instead.items():
        text = text.replace(f"\n{section}\n", f"\n{section}\n  {line}\n")
    parsed = parse(text.format(knocked=knocked, finish=f"  {finish}"), "meant.rules")
    assert parsed.value is not None, parsed.findings
    return parsed.value.games[0]


def alone() -> str:
    """The sheet where one side plays alone."""
    text = SIDES
    for said, instead in ALONE.items():
        text = text.replace(said, instead)
    return text.replace("when there are no cones", "when they have no cones standing")


def codes(*args: str, **instead: str) -> set[str]:
    return {each.code for each in findings(*args, **instead)}


@pytest.mark.parametrize(
    ("first", "other", "refused"),
    [
        ("a missed ball rests in the half it was sent to", "a missed ball rests in the middle", True),
        ("a missed ball rests in the half it was sent to", "a caught ball rests in the middle", False),
        ("a missed ball rests in the half it was sent to", "a missed ball rests in the half it was sent to", False),
    ],
)
def test_one_ball_comes_to_lie_in_one_place(first: str, other: str, refused: bool) -> None:
    assert ("G-contradiction" in codes(play=f"{first}\n  {other}")) == refused


def test_it_comes_to_lie_in_one_place_where_one_side_plays_alone() -> None:
    rests = "a missed ball rests in the middle\n  a missed ball rests behind a back line"
    sheet = alone().replace("\nwhen\n", f"\n  {rests}\nwhen\n").format(knocked="it stays down", finish="")
    parsed = parse(sheet).value
    assert parsed is not None
    assert "G-contradiction" in {each.code for each in resolve(parsed.games[0], library.kit_categories()).findings}


@pytest.mark.parametrize("half", ["half it was sent to", "half it came from", "half of the other side"])
def test_a_ball_that_goes_to_a_half_comes_to_lie_anywhere_in_it(half: str) -> None:
    text = SIDES.replace("\nwhen\n", "\n  a missed ball {verb} the {half}\nwhen\n")
    sheets = (text.format(knocked="it stays down", finish="", half=half, verb=verb) for verb in ("goes to", "rests in"))
    one, other = (resolved(game_in(sheet)).play for sheet in sheets)
    assert one == other


@pytest.mark.parametrize(("ball", "refused"), [("a ball", True), ("a soft ball", False), ("a red ball", False)])
def test_of_two_kinds_the_ball_that_goes_over_is_named(ball: str, refused: bool) -> None:
    said = {"kit": "2 red balls, like a soft volleyball", "set-up": "1 red ball in each half"}
    assert ("G-sense" in codes(when=f"a player fouls: {ball} goes to the other side", **said)) == refused


@pytest.mark.parametrize(("whose", "refused"), [("its", True), ("that", False), ("their", False), ("the", False)])
def test_a_ball_is_nobodys(whose: str, refused: bool) -> None:
    assert ("G-sense" in codes(when=f"a ball is missed: {whose} soft ball goes to the middle")) == refused


@pytest.mark.parametrize("unit", ["60 s", "minute", "round"])
@pytest.mark.parametrize("determiner", ["a", "the", "that", "every"])
def test_how_often_tasks_change_is_said_by_every(determiner: str, unit: str) -> None:
    found = codes(sides="role guard: 1 player of each side", play=f"guards change {determiner} {unit}")
    assert ("G-sense" in found) == (determiner != "every")


def test_a_thing_that_stays_as_it_is_is_played_like_one_that_stands_up_again() -> None:
    plays = [resolved(game_in(SIDES.format(knocked=said, finish=""))).play for said in
             ("it stays as it is", "it stands up again", "it stays down")]  # fmt: skip
    assert plays[0] == plays[1] != plays[2]


@pytest.mark.parametrize("place", ["in the middle", "behind a back line"])
def test_what_lies_there_is_there_whoever_plays(place: str) -> None:
    """Also where one side plays alone."""
    line = f"the round ends when there are no soft balls {place}, nobody wins"
    assert game_in(alone().format(knocked="it stays down", finish=f"  {line}"))


@pytest.mark.parametrize("there", ["2 cones", "no cones", "no lives", "2 points"])
def test_of_what_lies_nowhere_it_is_advised_to_say_how_it_stands(there: str) -> None:
    line = "the round ends when {}, nobody wins"
    (found,) = findings(finish=line.format(f"there are {there}"))
    advised = str(found.hint).partition(": ")[2]
    assert advised and not codes(finish=line.format(advised))


@pytest.mark.parametrize("slip", ["foambll", "bowlng pin", "hula hop"])
def test_a_slip_in_a_thing_of_the_kit_is_mended(slip: str) -> None:
    (found,) = findings(kit=f"3 {slip}s")
    assert found.code == "G-unknown-kit" and found.corrections


@pytest.mark.parametrize(("name", "verb"), [("north hops", True), ("north goblin", False), ("north cones", False)])
def test_what_players_do_is_told_from_a_name_that_nothing_has(name: str, verb: bool) -> None:
    (found,) = findings(when=f"{name} has 2 points: north loses 1 point")
    assert found.code == "G-unknown"
    assert ("a side could stand here" in found.title) != verb


@pytest.mark.parametrize(("ends", "next_of_it"), [("else next gong wins", True), ("else gong wins", False)])
def test_the_next_of_anything_is_told_to_be_a_point(ends: str, next_of_it: bool) -> None:
    advised = "more points wins, else the next point wins"
    (found,) = findings(finish=f"after 5 min: more points wins, {ends}")
    assert (advised in str(found.hint)) == next_of_it
    assert not codes(when="a ball is missed: the thrower's side loses 1 point", finish=f"after 5 min: {advised}")


@pytest.mark.parametrize("only", ["", ", only guards enter there"])
@pytest.mark.parametrize("start", ["guards in the keep zone", "1 guard of each side in the keep zone"])
def test_those_stay_where_they_start_who_all_start_where_they_alone_enter(start: str, only: str) -> None:
    text = SIDES.replace("halved across", f"in one piece\n  keep zone: 3 m deep, before each back line{only}")
    text = text.replace("mirrored\n", "mirrored\n  role guard: 2 players of each side\n")
    text = text.replace("2 soft balls in each half", f"soft balls in the middle\n  {start}")
    play = resolved(game_in(text.format(knocked="it stays down", finish=""))).play
    homes = {home.at.of for home in play.homes if home.who.role == RoleId("guard")}
    assert (AreaId("keep zone") in homes) == (only != "" and start == "guards in the keep zone")

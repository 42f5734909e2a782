"""Whose side a word means: whose pass is caught, whose base it is, who catches, whose things are nobody's."""

from __future__ import annotations

import pytest

import library
from grammar.core.reading.from_game import core_of
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

TWO_SIDES = """
game Whose
space
  court 18 m by 9 m, {court}
  far base: behind each back line
sides
  north and south, 2 to 6 players each, mirrored
kit
  1 foam ball
  1 cone for each side
set-up
  {set_up}
  cones on the back line of their side
play
  {play}
when
  {when}
finish
  the first side to 2 points wins
"""
BASE = {
    "court": "in one piece",
    "set_up": "1 player of each side on the far base of the other side\n  foam ball in the middle",
    "play": "players pass a foam ball to a team-mate on the far base of the other side\n"
    "  whoever catches a ball has it",
}
REST = {
    "court": "halved across",
    "set_up": "foam ball in the half of north",
    "when": "a cone is knocked: it stands up again and the roller's side scores 1 point",
}
EACH_ALONE = """
game Chimneys
space
  court 18 m by 12 m, in one piece
sides
  settlers, 2 to 6 players, each for themselves
kit
  2 chimneys, like a plastic pin
  1 foam ball
set-up
  chimneys on the court
  foam ball on the court
play
  settlers roll a foam ball at the chimneys of the other settlers
  the teacher stands up {which}
when
  a chimney is knocked: it stays down
finish
  play goes on until the clock stops
  after 8 min: nobody wins
"""


def _passing(scores: str) -> str:
    return TWO_SIDES.format(**BASE, when=f"a pass is caught on the far base of the other side: {scores} scores 1 point")


def _rolling(whose: str) -> str:
    rests = f"a caught ball rests in the half of {whose}"
    return TWO_SIDES.format(**REST, play=f"players roll a foam ball at the cones of the other side\n  {rests}")


@pytest.mark.parametrize("scores", ["the side", "it", "the passer's side", "the catcher's side", "the other side"])
def test_whose_pass_is_caught(scores: str) -> None:
    agree(game_in(_passing(scores)), {"north": 2, "south": 2})


def _knocking(then: str) -> str:
    play = f"{BASE['play']}\n  players roll a foam ball at the cones of the other side"
    point = "a pass is caught: the catcher's side scores 1 point"
    return TWO_SIDES.format(**(BASE | {"play": play}), when=f"a cone is knocked: it stays down and {then}\n  {point}")


@pytest.mark.parametrize(
    "then",
    [
        "the roller goes to the far base of that side",
        "all players of that side change places with all on the far base of the thrower's side",
        "all players of the roller's side change places with all on the far base of the other side",
        "the roller changes places with the first on the far base of the other side",
    ],
)
def test_whose_base_somebody_goes_to(then: str) -> None:
    agree(game_in(_knocking(then)), {"north": 2, "south": 2})


@pytest.mark.parametrize(
    ("who", "base", "against"),
    [
        ("all players of that side change places with all on", "their far base", "the thrower's side"),
        ("all players of that side change places with all on", "the far base", "the thrower's side"),
        ("all players of that side change places with all on", "the far base of the other side", "the thrower's side"),
        ("all players of the roller's side change places with all on", "their far base", "the other side"),
        ("the roller changes places with the first on", "the far base", "the other side"),
    ],
)
def test_only_others_wait_there(who: str, base: str, against: str) -> None:
    parsed = parse(_knocking(f"{who} {base}").lstrip("\n"), "(test)")
    assert parsed.value is not None
    found = resolve(parsed.value.games[0], library.kit_categories()).findings
    whole = f"{who.split(' with ')[1]} the far base of {against}"
    assert [(each.title, each.hint) for each in found] == [
        (f"`{base}`: only players of the other side wait there.", f"Say of its own players: {whole}")
    ]
    agree(game_in(_knocking(f"{who} the far base of {against}")), {"north": 2, "south": 2})


HOME = "1 player of each side on their home base"


def _at_home(then: str) -> str:
    """The same with a base of their own, on which one of each side waits."""
    sheet = _knocking(then).replace("  far base:", "  home base: before each back line\n  far base:")
    return sheet.replace("  cones on", f"  {HOME}\n  cones on")


@pytest.mark.parametrize(
    "then",
    [
        "all players of that side change places with all on the home base",
        "all players of the roller's side change places with all on their home base",
        "all players of each side change places with all on the home base",
        "the roller changes places with the first on the home base",
        "the first on the home base goes to the far base of the other side",
    ],
)
def test_who_comes_from_their_own_base(then: str) -> None:
    agree(game_in(_at_home(then)), {"north": 3, "south": 3})


@pytest.mark.parametrize(
    ("then", "title", "hint"),
    [
        (
            "the roller changes places with the first on the home base of that side",
            "`the home base of that side`: only players of the other side wait there.",
            "Say of its own players: the first on the home base",
        ),
        (
            "all on the home base of each side join the other side",
            "`the other side`: players of several sides may wait there, and each has another.",
            "Name the side: north or south.",
        ),
        (
            "all on the home base of each side go to the far base of the other side",
            "`the other side`: players of several sides may wait there, and each has another.",
            "Name the side: north or south.",
        ),
    ],
)
def test_of_which_side_they_are_is_not_known(then: str, title: str, hint: str) -> None:
    parsed = parse(_at_home(then).lstrip("\n"), "(test)")
    assert parsed.value is not None
    found = resolve(parsed.value.games[0], library.kit_categories()).findings
    assert [(each.title, each.hint) for each in found] == [(title, hint)]


@pytest.mark.parametrize("whose", ["the catcher", "the other side", "the thrower"])
def test_where_a_caught_ball_rests(whose: str) -> None:
    agree(game_in(_rolling(whose)), {"north": 1, "south": 1})


@pytest.mark.parametrize("which", ["a chimney", "a settlers's chimney"])
def test_what_is_put_up_where_each_is_alone(which: str) -> None:
    agree(game_in(EACH_ALONE.format(which=which)), {"settlers": 2})


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        (_passing("the side"), _passing("the passer's side"), True),
        (_passing("the side"), _passing("the other side"), False),
        (_rolling("the catcher"), _rolling("the other side"), True),
        (_rolling("the catcher"), _rolling("the thrower"), False),
    ],
)
def test_what_means_the_same(one: str, other: str, alike: bool) -> None:
    mine, its = (core_of(game_in(each)).value for each in (one, other))
    assert mine is not None and its is not None
    assert (mine.play == its.play) == alike

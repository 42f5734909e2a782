"""What play shows and the sheet alone has shown before is told once, with its cause; what has another cause is not."""

from __future__ import annotations

import pytest

import library
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.staging.staging import stage
from grammar.finding import Finding, Severity
from library.granted import granted_sheet
from tests.interpreter.sheets import game_in

GAME = """
game One Cause
  {head}
space
  court 18 m by 9 m, halved across
sides
  north and south, 3 to 6 players each{alike}
kit
  4 foam balls
  2 {kit}
set-up
  {things} on the back line of their side
  {balls}
play
  players stay in their half
  {play}
  a ball is held at most 10 s
when
  {when}
finish
  {finish}
"""
USUAL = {
    "head": "ages 9 to 12",
    "alike": ", mirrored",
    "balls": "2 foam balls in each half",
    "kit": "mats for each side, like a thick mat",
    "things": "mats",
    "play": "players overarm throw a foam ball at the mats of the other side",
    "when": "a mat is knocked: the thrower's side scores 1 point",
    "finish": "after 6 min: more points wins, else a draw",
}
HIT = "players overarm throw a foam ball at the players of the other side"
LATE = "a ball is held longer than 10 s: the ball goes to the half of the other side"
ROLL = "players roll a foam ball at the tins of the other side"
TINS = {"kit": "tins for each side, like a tin", "things": "tins", "play": ROLL}
WRONG = {
    "only one side scores": ("N-mirrored", {"when": "a mat of north is knocked: south scores 1 point"}),
    "only what one side has falls": (
        "N-mirrored",
        {
            "kit": "cones for each side",
            "things": "cones",
            "play": "players roll a foam ball at the cones of the other side",
            "when": "a cone of north is knocked: it stands up again",
            "finish": "a side wins when the other side has no cones standing\n  after 6 min: a draw",
        },
    ),
    "nothing follows of a hit": (
        "C-idle",
        {"play": HIT, "when": LATE, "finish": "a side wins when the other side has no "
         "players in\n  after 6 min: a draw"},
    ),
    "what follows hangs on a switch": (
        "C-idle",
        {"head": "switch hits count, usually off", "play": HIT, "when": "with hits count, a player is hit: that player "
         "is out", "finish": "a side wins when the other side has no players in\n  after 6 min: a draw"},
    ),
    "points go to whom it is done": (
        "N-own-down",
        {
            "alike": "",
            "balls": "4 foam balls in the half of north",
            "play": "players of north overarm throw a foam ball at the mats of the other side\n  "
            "a missed ball goes back\n  a scored ball goes back",
            "when": "a mat is knocked: its side scores 1 point",
        },
    ),
    "lives that nobody loses": (
        "C-idle",
        {
            "alike": ", mirrored\n  each player has 2 lives",
            "play": HIT,
            "when": "a player is hit: play goes on",
            "finish": "a side wins when the other side has no players in\n  after 6 min: more lives wins, else a draw",
        },
    ),
    "too high for points": ("N-too-high", TINS | {"when": "a tin is knocked: the roller's side scores 1 point"}),
    "too high to fall": (
        "N-too-high",
        TINS | {"when": "a tin is knocked: it stays down", "finish": "a side wins when the other side has no tins "
                "standing\n  after 6 min: a draw"},
    ),
}  # fmt: skip


def _found(change: dict[str, str], forecast: bool = False) -> list[Finding]:
    game = game_in(GAME.format(**{**USUAL, **change}))
    made = staged(stage(game, library.norms(), library.kit_names()), granted_sheet()).value
    assert made is not None
    answer = proved(made)
    if forecast:
        answer = foreseen(answer, library.norms(), library.kit_names())
    return [each for each in answer.findings if each.severity is Severity.WARNING]


@pytest.mark.parametrize("case", WRONG)
def test_one_cause_is_one_thing_to_mend(case: str) -> None:
    code, change = WRONG[case]
    (found,) = _found(change)
    assert found.code == code
    assert " win, whatever happens" in found.hint, "what comes of it is told with it"
    if "switch" in case:
        assert "`hits count`, which is off" in found.hint


def test_the_usual_game_has_nothing_to_mend() -> None:
    assert not _found({})


def test_unequal_odds_of_unlike_sides_are_no_second_thing_to_mend() -> None:
    _, change = WRONG["only one side scores"]
    codes = [each.code for each in _found(change, forecast=True)]
    assert "N-mirrored" in codes and "F-lopsided" not in codes


def test_what_has_another_cause_is_told_apart() -> None:
    """That nobody can win comes of the finish here, and not of what makes the sides unlike."""
    change = {
        "when": "a mat of north is knocked: south scores 1 point\n  a mat of south is knocked: north scores 2 points",
        "finish": "a side wins when the other side has no players in\n  after 6 min: a draw",
    }
    assert {each.code for each in _found(change)} > {"N-mirrored"}


STORES = """
game Stores
space
  court 18 m by 12 m, in one piece
  hold base: 2 m deep, before each back line
  dock circle: 2 m deep, in the middle
sides
  brigs and sloops, 4 to 8 players each, mirrored
kit
  3 coins, like a marker dome
  3 gems, like a beanbag
set-up
  coins in the dock circle
  gems in {where}
play
  players take a coin or a gem from the dock circle to their hold base
when
  a coin arrives: the carrier's side scores 1 point
  a gem arrives: the carrier's side scores 3 points
finish
  the round ends when there are no things in the dock circle, more points wins
  after 5 min: more points wins, else a draw
"""


@pytest.mark.parametrize(
    ("where", "codes"),
    [("the dock circle", []), ("the hold base of brigs", ["N-mirrored"])],
)
def test_what_lies_with_one_side_alone_is_one_thing_to_mend(where: str, codes: list[str]) -> None:
    made = staged(
        stage(game_in(STORES.format(where=where)), library.norms(), library.kit_names()), granted_sheet()
    ).value
    assert made is not None
    found = [each for each in proved(made).findings if each.severity is Severity.WARNING]
    assert [each.code for each in found] == codes
    assert all('"a gem arrives' in each.hint for each in found)

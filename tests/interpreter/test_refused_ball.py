"""What cannot be said of a ball is refused with its place, and nothing of it is dropped."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.sheets import game_in

GAME = """
game Refused
space
  court 18 m by 9 m, {cut}
sides
  {sides}
  role keeper: 1 player of each side
kit
  2 soft balls, like a foam ball
  2 gates for each side, like a small goal
set-up
  soft balls in the middle
  gates on the back line of their side
play
  players {act} a soft ball {aim}
  {play}
when
  a gate is knocked: it stands up again
finish
  after 5 min: nobody wins
"""
USUAL = {
    "cut": "in one piece",
    "sides": "north and south, 2 to 6 players each, mirrored",
    "act": "roll",
    "aim": "at the gates of the other side",
    "play": "a missed ball goes to the other side",
}
REFUSED = {
    "there are no such halves": (
        {"play": "whoever catches a ball has it\n  a missed ball rests in the half it left"},
        "no halves",
    ),
    "a loose ball in halves": (
        {"cut": "halved across", "play": "whoever is first at a loose ball has it"},
        "in halves",
    ),
    "nobody catches what is missed": ({"play": "a missed ball stays with the catcher"}, "nobody who could be meant"),
    "a keeper too few": ({"play": "a keeper stands before each gate"}, "at most 1"),
    "nothing flies": ({"play": "a ball counts only after a bounce"}, "Nothing flies"),
    "nobody is aimed at": ({"play": "a hit above the knee does not count"}, "Nobody aims at players"),
    "run and stand": (
        {"act": "carry", "aim": "from wall to wall", "play": "nobody runs with the ball"},
        "from place to place",
    ),
    "which other side": (
        {"sides": "north, south and west, 2 to 6 players each, mirrored", "act": "pass", "aim": "to a team-mate"},
        "with 3 sides",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_it_is_refused_and_says_why(case: str) -> None:
    change, why = REFUSED[case]
    said = {**USUAL, **change}
    text = GAME.format(**said)
    if said["act"] in ("carry", "pass"):
        text = text.replace("when\n  a gate is knocked: it stands up again\n", "")
    sheet = parse(text.lstrip("\n"), "(test)").value
    assert sheet is not None
    outcome = resolve(sheet.games[0], library.kit_categories())
    assert outcome.value is None
    assert any(why in finding.title for finding in outcome.findings)


def test_the_same_sheet_without_it_is_read() -> None:
    assert game_in(GAME.format(**USUAL)).title == "Refused"

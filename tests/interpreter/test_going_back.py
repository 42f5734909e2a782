"""A ball that goes back: both readers let the side that sent it have it again, wherever it was sent."""

from __future__ import annotations

import pytest

from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Back Again
space
  court 18 m by 9 m, {cut}
  store base: behind each back line
sides
  {sides}, 2 to 6 players each, mirrored
kit
  {balls}, like a foam ball
  1 crate for each side, like a box
  2 cones for each side
set-up
  {start}
  cones on the back line of their side
  crates beside the cones
play
  players overarm throw a soft ball at the cones of {whose} side
  {play}
when
  a cone is knocked: it stands up again and the thrower's side scores 1 point
  {when}
finish
  a side wins when it has at least 2 points
"""
USUAL = {
    "cut": "halved across",
    "sides": "north and south",
    "balls": "2 soft balls",
    "start": "1 soft ball in each half",
    "whose": "the other",
    "play": "",
    "when": "a ball is missed: the ball goes back",
}
SHUT = "halved across\n  reed zone: 2 m deep, before each back line, nobody enters there"
WAYS = {
    "a miss": {},
    "one's own aim": {"whose": "their"},
    "a line of the play": {"play": "a missed ball goes back", "when": ""},
    "past where nobody fetches it": {"cut": SHUT, "play": "a missed ball goes back", "when": ""},
    "into where nobody fetches it": {"cut": SHUT, "play": "a missed ball goes to the half it was sent to", "when": ""},
    "to the others, past it": {"cut": SHUT, "play": "a missed throw goes to the other side", "when": ""},
    "to their half, into it": {"cut": SHUT, "play": "a missed ball goes to the half of the other side", "when": ""},
    "after a point": {"play": "a missed throw goes back", "when": "a cone is knocked: the ball goes back"},
    "to the crate": {"when": "a ball is missed: the soft ball goes back to the crate"},
    "to their crate in the play": {"play": "a missed ball goes back to the crate", "when": ""},
    "from the crate": {"start": "1 soft ball in the crate of each side"},
    "from each crate": {"start": "1 soft ball in each crate", "balls": "1 soft ball for each side"},
    "to a base": {
        "when": "a ball is missed: the ball goes back to the store base",
        "play": "players fetch balls from their store base",
    },
    "without halves": {"cut": "in one piece", "start": "each side begins with 1 soft ball"},
    "without halves, to the crate": {
        "cut": "in one piece",
        "start": "1 soft ball in each crate",
        "when": "a ball is missed: the ball goes back to the crate",
    },
    "three sides": {
        "sides": "north, south and west",
        "cut": "in equal parts",
        "balls": "3 soft balls",
        "whose": "their",
        "play": "a missed ball goes back to the crate",
        "when": "",
    },
}


def _text(change: dict[str, str]) -> str:
    lines = [line for line in GAME.format(**{**USUAL, **change}).splitlines() if line.strip()]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_give_it_back(way: str) -> None:
    game = game_in(_text(WAYS[way]))
    agree(game, dict.fromkeys((side.name for side in game.sides), 2))


REFUSED = {
    "another's": ({"when": "a ball is missed: the ball goes back to the crate of the other side"}, "whoever sent it"),
    "a crate of nobody": (
        {
            "when": "a ball is missed: the ball goes back to the tub",
            "balls": "2 soft balls, like a foam ball\n  1 tub",
        },
        "it is nobody's",
    ),
    "sent by nobody": ({"when": "a player fouls: the ball goes back"}, "Nobody is spoken of who carries anything"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_goes_back_elsewhere_is_refused(case: str) -> None:
    change, why = REFUSED[case]
    text = _text(change)
    if "1 tub, like a foam ball" in text:
        text = text.replace("1 tub, like a foam ball", "1 tub, like a box").replace(
            "crates beside", "tub in the middle\n  crates beside"
        )
    sheet = parse(text, "(test)").value
    assert sheet is not None
    outcome = resolve(sheet.games[0], kit_categories())
    assert outcome.value is None
    assert any(why in finding.title for finding in outcome.findings), [each.title for each in outcome.findings]

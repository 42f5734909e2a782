"""Points at the start: both readers count from there; and who plays alone and has a thing of their own loses some."""

from __future__ import annotations

import pytest

from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game From Ten
space
  court 18 m by 9 m, {cut}
sides
  {sides}
  {begin}
kit
  2 soft balls, like a foam ball
  1 cone for each {whose}
set-up
  {start}
  {set_up}
play
  {who} roll a soft ball at the cones of {other}
when
  a cone is knocked: {knocked} and it stands up again
  {when}
finish
  {finish}
"""
USUAL = {
    "cut": "halved across",
    "sides": "north and south, 2 to 6 players each, mirrored",
    "begin": "each side begins with 3 points",
    "whose": "side",
    "start": "1 soft ball in each half",
    "set_up": "cones on the back line of their side",
    "who": "players",
    "other": "the other side",
    "knocked": "its side loses 1 point",
    "when": "",
    "finish": "a side loses when it has no points",
}
ALONE = {
    "cut": "in one piece",
    "sides": "settlers, 2 to 6 players, each for themselves",
    "begin": "each player begins with 2 points",
    "whose": "settler",
    "start": "soft balls in the middle",
    "set_up": "cones on the court, in a ring",
    "who": "settlers",
    "other": "the other settlers",
    "finish": "after 3 min: the player with the most points wins",
}
WAYS = {
    "lost only": {},
    "lost and won": {"knocked": "its side loses 1 point and the roller's side scores 1 point"},
    "to a number": {"knocked": "the roller's side scores 1 point", "finish": "the first side to 5 points wins"},
    "one side": {
        "begin": "north begins with 2 points",
        "finish": "the first side to 4 points wins\n  after 5 min: a draw",
        "knocked": "the roller's side scores 1 point",
    },
    "in the set-up": {"begin": "", "set_up": "cones on the back line of their side\n  each side begins with 2 points"},
    "by the clock": {"finish": "after 5 min: more points wins, else the next point wins"},
    "down to 0": {"finish": "a side wins when the other side has 0 points"},
    "down to a number": {"finish": "a side loses when it has 1 point"},
    "asked in between": {"when": "a side has 1 point: the other side wins", "finish": "after 5 min: a draw"},
    "alone": ALONE,
    "alone, won and lost": ALONE | {"knocked": "the roller's side scores 1 point and its side loses 1 point"},
}


def _text(change: dict[str, str]) -> str:
    lines = [line for line in GAME.format(**{**USUAL, **change}).splitlines() if line.strip()]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_count_from_there(way: str) -> None:
    game = game_in(_text(WAYS[way]))
    agree(game, dict.fromkeys((side.name for side in game.sides), 2))


REFUSED = {
    "of each player of a side": ({"begin": "each player begins with 5 points"}, "The points of a side"),
    "of a side of one each": (ALONE | {"begin": "each side begins with 5 points"}, "Each plays for themselves"),
    "nothing changes them": ({"knocked": "play goes on", "finish": "after 5 min: more points wins"}, "wins or loses"),
    "twice": ({"set_up": "cones on the back line of their side\n  north begins with 2 points"}, "Two lines say"),
    "half a point": ({"begin": "each side begins with 2.5 points"}, "Nobody begins"),
    "their owner, of nobody's": (ALONE | {"whose": "side"}, "is nobody here"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_nobody_can_begin_with_is_refused(case: str) -> None:
    change, why = REFUSED[case]
    text = _text(change)
    text = text.replace("1 cone for each side\n", "3 cones\n") if "nobody's" in case else text
    sheet = parse(text, "(test)").value
    assert sheet is not None
    found = resolve(sheet.games[0], kit_categories())
    assert any(why in each.title for each in found.findings), [each.title for each in found.findings]

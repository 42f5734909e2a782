"""A goal, a mat on the wall or a bell stays as it is when it is hit: each hit counts, and it is never down."""

from __future__ import annotations

import pytest

import library
from compose.net.from_game import net_of
from compose.net.lower.fixed import CODE
from grammar.core.values import Posture
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in, granted, net_in

PLAYERS = {"north": 1, "south": 1}
SHEET = """
game Hits
space
  court 18 m by 9 m, halved across
sides
  north and south, 1 to 6 players each, mirrored
kit
  1 soft ball, like a foam ball
  2 marks for each side, like a {like}
  1 pin for each side, like a plastic pin
set-up
  1 soft ball in the half of north
  marks on the back line of their side
  pins on the back line of their side
play
  players overarm throw a soft ball at the targets of the other side{how}
when
  a mark is knocked: {follows}
  {when}
finish
  {finish}
"""
USUAL = {
    "like": "wall target",
    "how": "",
    "follows": "the thrower's side scores 1 point",
    "when": "a pin is knocked: it stays down",
    "finish": "the first side to 2 points wins",
}
ASKED = {
    "a way to win": {"finish": "a side wins when the other side has no marks standing"},
    "the clock": {"finish": "the first side to 2 points wins\n  after 4 min: more marks standing wins"},
    "a rule": {"when": "a pin is knocked while it has no marks standing: the thrower's side scores 1 point"},
    "a count": {"when": "a side has no marks standing: the other side scores 1 point"},
    "only when": {"how": ", only when it has all marks standing"},
    "one after the other": {"how": " in order"},
}


def net_of_case(case: dict[str, str]) -> tuple[object, set[str]]:
    outcome = net_of(game_in(SHEET.format(**{**USUAL, **case})), granted(), PLAYERS)
    return outcome.value, {finding.code for finding in outcome.findings}


@pytest.mark.parametrize("like", [each.name for each in library.kit_catalogue().values() if each.category == "target"])
def test_it_falls_as_the_kit_says(like: str) -> None:
    """By both readers; a mark that falls makes its side one poorer, one that does not is worth points for ever."""
    game = game_in(SHEET.format(**USUAL | {"like": like}))
    ours, theirs = read_by_both(game, PLAYERS)
    assert ours == theirs
    places = [place for place in net_in(game, PLAYERS).places if place.kind == "mark"]
    down = any(place.standing is Posture.DOWN for place in places)
    assert down is not (like in library.fixed_kit())


@pytest.mark.parametrize("case", ASKED.values(), ids=ASKED)
def test_what_asks_how_it_stands_is_told(case: dict[str, str]) -> None:
    assert CODE in net_of_case(case)[1]
    assert CODE not in net_of_case({**case, "like": "plastic pin"})[1]
    assert CODE not in net_of_case({**case, "follows": "it stays down and the thrower's side scores 1 point"})[1]


def test_the_sheet_may_say_it_of_anything() -> None:
    """What stays as it is stands as what stands up again at once."""
    scores = "and the thrower's side scores 1 point"
    said, again = (f"it {how} {scores}" for how in ("stays as it is", "stands up again"))
    games = [game_in(SHEET.format(**USUAL | {"like": "cone", "follows": each})) for each in (said, again)]
    assert read_by_both(games[0], PLAYERS) == read_by_both(games[1], PLAYERS)

"""The first so many of a queue come back at once: the second reader and the net agree; what cannot be is refused."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 3, "south": 3}
SEVERAL = """
game Several
space
  court 18 m by 9 m, halved across
  rest queue: beside {beside}
sides
  north and south, 2 to 6 players each, mirrored
  {role}
kit
  2 soft balls, like a foam ball
  1 cone for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players stay in their half
  players underarm throw a soft ball at the cones or the players of the other side
  {play}
when
  a player is hit: that player waits in the rest queue
  {when}
finish
  a side wins when the other side has no cones standing
"""
CASES = {
    "first two": ("", "a ball is caught: the first 2 in the catcher's rest queue return"),
    "last two": ("", "a ball is caught: the last 2 in the thrower's rest queue return"),
    "freed two at a time": ("the teacher frees the first 2 in each rest queue", "a ball is caught: play goes on"),
    "one as ever": ("", "a ball is caught: the first 1 in the catcher's rest queue returns"),
}


@pytest.mark.parametrize("name", CASES)
def test_both_readers_come_to_the_same(name: str) -> None:
    play, when = CASES[name]
    text = SEVERAL.format(beside="each half", role="", play=play, when=when)
    game = game_in(text)
    mine, its = read_by_both(game, PLAYERS)
    assert not its.differs(mine)


def test_a_queue_of_several_roles_is_refused() -> None:
    when = "a ball is caught: the first 2 in the catcher's rest queue return"
    text = SEVERAL.format(beside="each half", role="role guard: 1 player of each side", play="", when=when)
    rules = parse(text.lstrip(), "several.rules").value
    assert rules is not None
    findings = resolve(rules.games[0], library.kit_categories()).findings
    assert [each.code for each in findings] == ["G-sense"]

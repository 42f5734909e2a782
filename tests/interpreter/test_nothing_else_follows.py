"""Where a line says only that play goes on, no wider line about the same event holds: both readers agree."""

from __future__ import annotations

import pytest

from compose.net.lower.meant_anew import meant_anew
from compose.staging.resolved import resolved
from grammar.core.rules import Nothing
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Nothing Else
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
  {sides}
kit
  2 soft balls, like a foam ball
  2 cones for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players overarm throw a soft ball at the cones or the players of the other side
when
  a player is hit: that player waits in the rest queue and the thrower's side scores 1 point
  a ball is caught: the first in the catcher's rest queue returns
  a cone is knocked: it stays down and the thrower's side scores 1 point
  {when}
finish
  the first side to 2 points wins
  after 3 min: more points wins, else a draw
"""
WAYS = {
    "a catch in the first minute": "in the first minute, a ball is caught: play goes on",
    "a hit in the first minute": "in the first minute, a player is hit: play goes on",
    "a cone while": "a cone is knocked while the other side has 1 player in: play goes on",
    "cones of one side": "a cone of north is knocked: play goes on",
    "a hit of a guard": "a guard is hit: play goes on",
    "a catch by a guard": "a ball is caught by a guard: play goes on",
    "two of them": "a guard is hit: play goes on\n  in the first minute, a player is hit: play goes on",
    "a narrower one that says something": "in the first minute, a ball is caught: play goes on\n"
    "  a ball is caught by a guard: the catcher's side scores 1 point",
}


def sheet(when: str) -> str:
    sides = "role guard: 1 player of each side" if "guard" in when else ""
    lines = GAME.format(sides=sides, when=when).splitlines()
    return "\n".join(line for line in lines if line.strip()) + "\n"


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_let_nothing_else_follow(way: str) -> None:
    agree(game_in(sheet(WAYS[way])), {"north": 2, "south": 2})


@pytest.mark.parametrize("way", WAYS)
def test_it_is_told_that_earlier_programs_read_it_otherwise(way: str) -> None:
    core = resolved(game_in(sheet(WAYS[way])))
    assert any(isinstance(effect, Nothing) for rule in core.play.rules for effect in rule.effects)
    assert {finding.code for finding in meant_anew(core)} == {"N-meant-anew"}


@pytest.mark.parametrize(
    "when",
    [
        "a ball is missed: play goes on",
        "a ball is caught: play goes on",
        "a king is hit: that king loses a life and play goes on",
    ],
)
def test_line_that_is_no_narrower_or_says_more_spares_nothing(when: str) -> None:
    text = sheet(when)
    if "king" in when:
        text = text.replace("mirrored\n", "mirrored\n  role king: 1 player of each side\n  each king has 2 lives\n")
    core = resolved(game_in(text))
    assert not any(isinstance(effect, Nothing) for rule in core.play.rules for effect in rule.effects)

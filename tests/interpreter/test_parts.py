"""Halves and innings that say themselves how long each lasts: as if the clock had a line of its own."""

from __future__ import annotations

import pytest

from grammar.core.reading.from_game import core_of
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

TEXT = """
game Innings
space
  court 12 m by 9 m, in one piece
sides
  batters, 1 to 9 players
  fielders, 1 to 9 players
kit
  1 soft ball, like a foam ball
  2 posts for fielders, like a pin
set-up
  soft ball on the court
  posts on the back line of their side
play
  batters roll a soft ball at the posts
when
  a post is knocked: {knocked}
  {when}
finish
  {finish}
"""
POINT = "it stands up again and the roller's side scores 1 point"
PARTS = ("two halves of 2 min, the sides change tasks", "4 innings of 2 min, the sides change tasks")


@pytest.mark.parametrize("parts", PARTS)
@pytest.mark.parametrize(
    ("knocked", "when", "clock"),
    [
        (POINT, "in the last minute, a ball is missed: the other side scores 1 point", "more points wins, else a draw"),
        ("it stays down", "", "a draw"),
    ],
)
def test_the_clock_of_the_parts_is_read_by_both(parts: str, knocked: str, when: str, clock: str) -> None:
    points = "the first side to 2 points wins"
    ends = f"\n  {points if knocked == POINT else 'batters win when fielders have no posts standing'}"
    short = game_in(TEXT.format(knocked=knocked, when=when, finish=parts + ends))
    whole = game_in(TEXT.format(knocked=knocked, when=when, finish=f"after 2 min: {clock}\n  {parts}{ends}"))
    one, other = core_of(short).value, core_of(whole).value
    assert one is not None and other is not None and one.play == other.play
    assert one.play.bell is not None and one.play.bell.after_s == 120
    agree(short, {"batters": 1, "fielders": 1})

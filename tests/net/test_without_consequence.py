"""A touch or a hit of which nothing follows is told; one of which a line speaks, if only that play goes on, is not."""

from __future__ import annotations

import pytest

from compose.net.lower.without_consequence import without_consequence
from compose.staging.resolved import resolved
from grammar.finding import Severity
from tests.interpreter.sheets import game_in

SHEET = """
game Ball Across
  about "Who has the ball brings it over the line, and nothing comes of a touch."
  credit "Tarn Valley schools (invented)"
  licence CC-BY-4.0
space
  court 18 m by 9 m, in one piece
sides
  north and south, 2 to 8 players each, mirrored
kit
  1 foam ball
set-up
  north begins with the ball
play
  players carry a foam ball to the back line of the other side

  {play}
  a foam ball is held at most 10 s
when
  a foam ball arrives: the carrier's side scores 1 point
  {when}
finish
  the first side to 3 points wins
  after 4 min: more points wins, else a draw
"""
TOUCH = "players touch players of the other side who carry a foam ball"
THROW = "players overarm throw a foam ball at the players of the other side"


def told(play: str, when: str = "") -> list[tuple[Severity, str]]:
    text = SHEET.format(play=play, when=when)
    text = "\n".join(line for line in text.splitlines() if line.strip())
    found = list(without_consequence(resolved(game_in(text))))
    return [(each.severity, text.splitlines()[each.place.line - 1].strip()) for each in found]


@pytest.mark.parametrize("play", [TOUCH, THROW, "players touch players of the other side"])
def test_what_nothing_follows_of_is_told_at_its_line(play: str) -> None:
    assert told(play) == [(Severity.WARNING, play)]


@pytest.mark.parametrize(("play", "when"), [
    (TOUCH, "a player who carries a foam ball is touched: the ball goes to the other side"),
    (TOUCH, "a player is touched: play goes on"),
    (THROW, "a player is hit: that player freezes"),
    (THROW, "a ball is caught: the thrower freezes"),
    ("players touch players of the other side", "a player is touched: that player freezes"),
    ("players pass a foam ball to a team-mate, 6 times a minute", ""),
])  # fmt: skip
def test_what_a_line_speaks_of_is_not(play: str, when: str) -> None:
    assert told(play, when) == []


def test_a_line_of_others_does_not_count() -> None:
    """That the touches of north have a consequence says nothing of those of south."""
    one = "a player is touched by north: that player freezes"
    assert told("players of north touch players of south\n  players of south touch players of north", one) == [
        (Severity.WARNING, "players of south touch players of north")
    ]

"""Several kinds in one line: both readers let whichever is come upon be taken, and score what is brought home."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Two Harvests
space
  court 18 m by 9 m, in one piece
  pot base: 2 m deep, before each back line
sides
  north and south, 4 to 6 players each, mirrored
kit
  1 carrot, like a beanbag
  2 onions, like a cone
  1 soft ball, like a foam ball
  1 yellow ball, like a foam ball
set-up
  carrot in the middle
  onions in the middle
  {balls}
play
  {play}
when
  {when}
finish
  the first side to 4 points wins
"""
TAKE = "players take a carrot or an onion from the middle to their pot base"
WORTH = "carrots score 1 and onions 3 points"
THROW = "players overarm throw a soft ball or a yellow ball at the players of the other side"
THEIRS = "the pot base of the other side"
SHEETS = {
    "whichever comes": (TAKE, WORTH, ""),
    "one at a time": (f"{TAKE}, only 1 player at a time", WORTH, ""),
    "from theirs, too": (
        f"{TAKE}\n  players take an onion or a carrot from {THEIRS} to their pot base, "
        "only when there are no onions in the middle",
        WORTH,
        "",
    ),
    "either ball": (
        f"north players take a carrot from the middle to their pot base\n  {THROW}",
        "carrots score 2 points\n  a player is hit: the thrower's side scores 1 point",
        "balls",
    ),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_take_the_same_kinds(sheet: str) -> None:
    play, when, balls = SHEETS[sheet]
    placed = "soft ball in the middle\n  yellow ball in the middle" if balls else ""
    text = GAME.format(play=play, when=when, balls=placed)
    lines = [line for line in text.splitlines() if line.strip() and (balls or " ball," not in line)]
    agree(game_in("\n".join(lines)), {"north": 2, "south": 2})


@pytest.mark.parametrize(("one", "other"), [("hoop", "bib"), ("gym ball", "clothes peg"), ("small goal", "quoit")])
def test_whatever_can_be_carried_is_taken_alike(one: str, other: str) -> None:
    text = GAME.format(play=TAKE, when=WORTH, balls="").replace("like a beanbag", f"like a {one}")
    lines = [line for line in text.splitlines() if line.strip() and " ball," not in line]
    whole = "\n".join(lines).replace("2 onions, like a cone", f"2 onions, like a {other}")
    agree(game_in(whole), {"north": 2, "south": 2})

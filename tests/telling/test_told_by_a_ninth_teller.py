"""What teachers say of places, sides and ends in words of their own is understood as they mean it."""

from __future__ import annotations

import pytest
from told_sheets import told

import library
from grammar.parse import parse
from grammar.resolve import resolve

RIVER = """\
game Over the River
space
  court 18 m by 10 m, in one piece
  ark: 2 m deep, at one back line
  shore: 3 m deep, before the other back line
sides
  20 players, all one team against the clock
kit
  30 blocks, like a box
set-up
  30 blocks on the shore
  all players on the shore
play
  players carry one block at a time from the shore to the ark
finish
  everybody wins when there are 20 blocks on the ark
  after 10 min: everybody has lost
"""
ALLEY = """\
game Reed Alley
space
  court 20 m by 12 m, in one piece
  home strip: 2 m deep, before each wall, nobody is touched there
  no catchers in the home strip
sides
  24 runners and 2 catchers
set-up
  runners in one home strip
  catchers in the middle
play
  runners run from wall to wall
  catchers touch runners
when
  a runner is touched: that player becomes a catcher
  a runner steps over the side line: that runner becomes a catcher
finish
  the round ends when there are 2 runners left, runners win
"""
CORNERS = """\
game Four Banks
space
  court 16 m by 16 m, in one piece
  a bank in each corner
sides
  4 teams of 7: red, blue, green and yellow
kit
  24 beanbags
set-up
  24 beanbags in the middle
play
  players fetch a beanbag from the middle and bring it to their own bank, only 1 player at a time
when
  the middle is empty: players may steal a beanbag from the bank of another side to their bank
finish
  after 5 min: most beanbags in the bank wins
"""
DUTIES = """\
game Three Duties
space
  court 20 m by 12 m, halved across
  goal area: 3 m deep, before each back line, only keepers stand there
sides
  red and blue, 10 players each, mirrored
  each side has 2 keepers, 6 runners and 2 helpers
kit
  1 foam ball
  1 goal for each side
set-up
  goals on the back line of their side
  keepers in their goal area
  red begins with the ball
play
  players throw the ball into the goal of the other side
  only keepers stand in the goal area
when
  a ball goes into a goal: 1 point
  a goal is scored: the keeper of the side that let it in starts with the ball
  every 2 min: keepers become helpers, helpers become runners, and 2 runners become keepers
finish
  after 6 min: most points wins, else the next point wins
"""
FOXES = """\
game Ribbon Row
space
  court 20 m by 12 m, in one piece
sides
  28 children, everyone for himself
kit
  28 ribbons
play
  players pull the ribbons of others
when
  a player is touched: the tagger scores 1 point
finish
  after 6 min: the player with most points wins, else a draw
"""
SAID = {
    "over the river": (
        RIVER,
        ["Ark: 2 m deep, before a back line.", "Crew wins when there are at least 20 blocks in the ark.",
         "After 10 minutes the round is over: crew loses."],
    ),
    "until two are left": (
        ALLEY,
        ["no catchers there", "When a runner fouls, whoever did so joins the catchers.",
         "The runners win when they have exactly 2 players in play."],
    ),
    "a bank in each corner": (
        CORNERS,
        ["Bank of each side: in its corner.", "to their bank, one at a time, but only when there are no"],
    ),
    "duties in turn": (
        DUTIES,
        ["Goal area of each side: 3 m deep, before its back line; only the keepers there.",
         "The keepers of each side stay in their goal area.", "Helper: 2 players of each side.",
         "A scored foam ball goes to the keeper of the other side.",
         "if that is level, play goes on and the next point wins"],
    ),
    "each for themselves": (FOXES, ["The rovers may touch other rovers.", "the player with the most points wins"]),
}  # fmt: skip


@pytest.mark.parametrize("which", SAID)
def test_what_a_teacher_says_is_understood(which: str) -> None:
    sheet, expected = SAID[which]
    said = told(sheet)
    assert [each for each in expected if each not in said] == []


def _mistakes(text: str) -> list[str]:
    rules = parse(text).value
    assert rules is not None
    return [finding.title for finding in resolve(rules.games[0], library.kit_categories()).findings]


def test_what_balls_go_into_is_not_knocked() -> None:
    into = DUTIES.replace("next point wins", "next goal wins")
    assert _mistakes(into) == ["Balls go into a `goal`: nothing knocks it."]
    at_it = into.replace("into the goal", "at the goal").replace("goes into a goal: 1", "leaves the court: 1")
    assert _mistakes(at_it.replace("court: 1 point", "court: the other side scores 1 point")) == []

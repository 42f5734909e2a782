"""A sheet in a teacher's own words is read whole, as the sheet in the language's words beside it is."""

from __future__ import annotations

from grammar.format import format_file
from grammar.own_names import DeclaredNames
from grammar.parse import parse

SAID = """
game Bottle Lane
  ages 9 to 12
  skills roll, aim

space
  court 18 m long and 9 m wide, two halves
  lane zone: 2 m in front of each back line

sides
  two teams, 8 to 14 players each
  two guards per team

kit
  6 soft balls
  5 plastic bottles per team

set-up
  the bottles are in the lane zone
  each team has 3 balls

play
  nobody crosses the middle line
  everyone rolls a ball at the bottles of the other team
  the guards protect their bottles with hands and feet
  only the guards may enter the lane zone
  no holding the ball longer than 10 seconds

when
  when a bottle falls it stays down
  a ball is stopped by a guard: the other team gets it
  each bottle that falls gives a point

finish
  the first team to knock over all bottles of the other team wins
  the game lasts 8 minutes
  the team with more bottles standing wins, otherwise it is a draw
"""
MEANT = """
game Bottle Lane
  ages 9 to 12
  skills roll, aim

space
  court 18 m by 9 m, halved across
  lane zone: 2 m deep, before each back line, only guards enter there

sides
  north and south, 8 to 14 players each, mirrored
  role guard: 2 players of each side

kit
  6 soft balls
  5 plastic bottles for each side

set-up
  the plastic bottles in the lane zone
  each side begins with 3 balls

play
  players stay in their half
  players roll a ball at the plastic bottles of the other side
  guards block shots at their plastic bottles with the hands and feet
  a ball is held at most 10 s

when
  a plastic bottle is knocked: it stays down
  a ball is blocked by a guard: the other side has the ball
  a plastic bottle is knocked: the thrower's side scores 1 point

finish
  a side wins when the other side has no plastic bottles standing
  after 8 min: more plastic bottles standing wins, else a draw
"""


def test_it_is_the_sheet_that_was_meant() -> None:
    said, meant = (parse(text).value for text in (SAID, MEANT))
    assert said is not None and meant is not None
    assert format_file(said) == format_file(meant)


def test_a_last_word_that_two_names_share_names_neither() -> None:
    two = SAID.replace("  6 soft balls", "  6 soft balls\n  4 glass bottles")
    outcome = parse(two)
    assert outcome.value is None or "plastic bottle is knocked" not in format_file(outcome.value)


def test_a_word_within_another_name_is_no_last_word() -> None:
    names = DeclaredNames(("lock keepers", "wooden locks", "lock keeper", "wooden lock"))
    assert names.in_full("Lock keepers guard their locks") == "Lock keepers guard their wooden locks"
    assert names.in_full("a wooden lock falls") == "a wooden lock falls"

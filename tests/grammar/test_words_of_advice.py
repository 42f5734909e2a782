"""Advice is made of words that mean something in the line that it is for."""

from __future__ import annotations

import re

import pytest
from proofreading import judge_of

SHEET = """\
game Nut Run
space
  court 18 m by 12 m, in one piece
  home base: behind the back line of squirrels
  far base: behind the back line of owls
  den base: along a side line
sides
  squirrels, 4 players
  owls, 4 players
kit
  8 nuts, like a clothes peg
set-up
  nuts in the home base
play
  squirrels take a nut from the home base to the far base
  owls touch squirrels
when
  a squirrel is touched: that player freezes
  a nut arrives: the carrier's side scores 1 point
  {when}
finish
  {finish}
  after 4 min: nobody wins
"""
SOUND = {"when": "a player fouls: that player is out", "finish": "a side wins when it has 6 points"}


def hint(**lines: str) -> str:
    found = judge_of("nuts.rules")(SHEET.format(**{**SOUND, **lines}))
    assert len(found) == 1, found
    return found[0].hint


def test_who_brings_a_thing_is_no_thing() -> None:
    said = hint(when="a nut arrives: that player is out")
    assert "the carrier instead of that player" in said
    assert not judge_of("nuts.rules")(SHEET.format(**SOUND | {"when": "a nut arrives: the carrier is out"}))


@pytest.mark.parametrize("amount", ["3", "no", "at most 2"])
def test_of_players_it_is_a_side_that_has_them(amount: str) -> None:
    said = hint(finish=f"the round ends when there are {amount} players in, nobody wins")
    (line,) = re.findall(r"Write: (.+)", said)
    assert not judge_of("nuts.rules")(SHEET.format(**SOUND | {"finish": line}))


@pytest.mark.parametrize("word", ["except", "without", "besides"])
def test_nobody_declares_a_place_for_whom_a_count_leaves_out(word: str) -> None:
    said = hint(finish=f"a side loses when it has no players in {word} owls")
    assert "at most 2 players in" in said and "zone" not in said


def test_what_players_are_to_keep_lies_in_a_place() -> None:
    said = hint(when="a squirrel who carries a nut is touched: the nut goes to the owls")
    assert "area of the sheet" in said
    line = "a squirrel who carries a nut is touched: the nut goes to the den base"
    assert not judge_of("nuts.rules")(SHEET.format(**SOUND | {"when": line}))


def test_a_name_that_is_declared_with_a_word_more_is_no_slip_of_another() -> None:
    """`bottles`, of which there are milk bottles, is not `blue` misspelt."""
    text = SHEET.replace("squirrels, 4 players", "blue, 4 players").replace("squirrel", "blue player")
    text = text.replace("8 nuts", "8 milk bottles").replace("nuts", "bottles").replace("a nut", "a milk bottle")
    said = judge_of("nuts.rules")(text.format(**{**SOUND, "finish": "a side wins when it has 12 bottles and sits"}))
    assert said and not any("speaks of" in each.title or "`blue`" in each.title for each in said), said


def test_a_line_belongs_elsewhere_only_where_its_names_mean_something_there() -> None:
    """Under another heading, `everybody` would be no more a side than here, where there are two."""
    (found,) = judge_of("nuts.rules")(SHEET.format(**{**SOUND, "finish": "after 10 min: everybody has lost"}))
    assert found.code == "G-unknown" and "a side could stand here" in found.title and "The sides are" in found.hint


@pytest.mark.parametrize("says", ["leave", "quit"])
def test_whoever_is_to_leave_a_place_is_not_told_to_join_it(says: str) -> None:
    """A line made whole and its name put right must not lose the word that says what happens."""
    assert "join the den base" not in hint(when=f"every 30 s: all squirrels {says} the den base")

"""A line that is none and holds a name with words of the language in it is refused with its line, and never a fault."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """game Lone Wolves

space
  court 18 m by 9 m, in one piece
  side bench: along a side line

sides
  wolves, 12 to 32 players, each for themselves

kit
  5 foam balls

set-up
  foam balls in the middle

play
  players overarm throw a foam ball at the players
  {line}

when
  a player is hit: that player waits on the side bench

finish
  after 8 min: nobody wins
"""
NO_SENTENCES = (
    "players on the side bench throw balls back onto the court",
    "players on the side bench throw a foam ball back into the game",
    "players on the side bench roll a foam ball onto the court",
    "players on the side bench rol a ball at the players",
    "players on the side bench throw balls back in",
    "whoever waits on the side bench comes bakc after 30 s",
    "players overarm thorw a foam ball at the players on the side bench",
)


@pytest.mark.parametrize("line", NO_SENTENCES)
def test_no_sentence_with_such_a_name_is_refused_with_its_line(line: str) -> None:
    read = parse(SHEET.format(line=line), "wolves.rules")
    assert read.value is None
    assert {each.place.line for each in read.findings} == {18}
    better = [line.line for each in read.findings for line in each.corrections]
    said = " ".join([*(f"{each.title} {each.hint}" for each in read.findings), *better])
    assert "ǂ" not in said


def test_a_slip_beside_such_a_name_is_mended_with_the_name() -> None:
    read = parse(SHEET.format(line="whoever waits on the side bench comes bakc after 30 s"), "wolves.rules")
    better = [better.line for each in read.findings for better in each.corrections]
    assert any("side bench" in line for line in better)
    sound = parse(SHEET.format(line="whoever waits on the side bench comes back after 30 s"), "wolves.rules")
    assert sound.value is not None

"""Where a line of the clock cannot be read to its end, the advice keeps the clock: with it the round still ends."""

from __future__ import annotations

import re

import pytest
from proofreading import judge_of

from compose.staging.resolved import resolved
from grammar.finding import Finding
from tests.interpreter.sheets import game_in

SHEET = """\
game Pin Row
space
  court 18 m by 9 m, halved across
sides
  north and south, 6 to 10 players each, mirrored
kit
  4 foam balls
  5 pins for each side, like a plastic pin
set-up
  pins on the back line of their side
  2 foam balls in each half
play
  players stay in their half
  players overarm throw a foam ball at the pins of the other side
when
  a pin is knocked: it stays down and the thrower's side scores 1 point
finish
  a side wins when the other side has no pins standing
"""
LINES = (
    "after 6 min: more pins standing wins, else one thrower of each side throws until one hits",
    "after 6 min: more pins standing wins, else the side that scored last wins",
    "after 6 min: more points wins, else a shoot-out of three each",
    "after 6 min: I shout last throw and more pins standing wins",
    "after 90 s: the pupils in the middle are counted",
)


def told(*finish: str) -> tuple[Finding, ...]:
    return judge_of("pins.rules")(SHEET + "".join(f"  {line}\n" for line in finish))


@pytest.mark.parametrize("line", LINES)
def test_the_advice_is_a_sheet_with_a_clock(line: str) -> None:
    (finding,) = told(line)
    advised = re.search(r'write `(after [^`]+)`.* for people \([^)]+\): (".+")$', finding.hint)
    assert advised is not None, finding.hint
    clock, quoted = advised.groups()
    text = (SHEET + f"  {clock}\n").replace("play\n", f"play\n  {quoted}\n", 1)
    assert not judge_of("pins.rules")(text)
    bell = resolved(game_in(text)).play.bell
    assert bell is not None and bell.after_s == (90 if "90 s" in line else 360)


def test_a_line_of_the_section_when_is_no_clock() -> None:
    text = SHEET.replace("when\n", "when\n  after 2 min: the pins are counted aloud by everybody\n")
    (finding,) = judge_of("pins.rules")(text)
    assert "so that the clock still ends the round" not in finding.hint

"""Who is sent away with something in their hands: it is told that it goes back, unless the line says where it goes."""

from __future__ import annotations

import pytest
from told_sheets import core_in

from compose.telling.read_back import read_back
from compose.telling.wording import ENGLISH
from tests.interpreter.sheets import game_in

SHEET = """game Peg Run
  ages 8 to 12
  about "Pegs are run past those who guard them."

space
  court 18 m by 12 m, in one piece
  home base: before the back line of runners
  far base: before the back line of guards
  walk queue: beside the court

sides
  runners, 6 to 14 players
  guards, 6 to 14 players

kit
  12 pegs, like a clothes peg

set-up
  pegs in the home base

play
  runners take a peg from the home base to the far base
  guards touch players of runners
  whoever waits in the walk queue comes back after 10 s

when
  a runner who carries a peg is touched: that player {what}

finish
  runners win when they have 12 pegs in the far base
  after 4 min: guards win
"""
BACK = "goes back to where it was taken from"


@pytest.mark.parametrize(
    ("what", "told"),
    [
        ("waits in the walk queue", f"the player touched waits in the walk queue and the peg {BACK}."),
        ("waits in the walk queue and the peg goes back", f"and the peg {BACK}."),
        ("drops the peg and waits in the walk queue", None),
    ],
)
def test_what_is_carried_goes_back_where_nothing_is_said(what: str, told: str | None) -> None:
    sections = read_back(core_in(game_in(SHEET.format(what=what))), ENGLISH).sections
    (line,) = [said.text for section in sections for said in section.said if "a runner with a peg" in said.text]
    assert line.count(BACK) == (told is not None)
    assert told is None or line.endswith(told)

"""What a sheet calls the parts of its game, every answer calls so, too: innings are no halves, be there two of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal.running import run

SHEET = """\
game Wicket Green
space
  court 20 m by 14 m, in one piece
sides
  strikers, 6 to 12 players
  fielders, 6 to 12 players
kit
  4 foam balls
  5 wickets, like a cone
set-up
  wickets before the back line of fielders, evenly spaced
  4 foam balls in the middle
play
  strikers strike a foam ball at the wickets, from 6 m away
when
  a wicket is knocked: {knocked}
finish
  {parts}
"""
SCORES = "it stands up again and the striker's side scores 1 point"
PARTS = {
    "innings": ("2 innings of 4 min, the sides change tasks", "half", "halves"),
    "halves": ("two halves of 4 min, the sides change tasks", "innings", "innings"),
}


@pytest.mark.parametrize("called", PARTS)
@pytest.mark.parametrize("knocked", [SCORES, "it stands up again"])
@pytest.mark.parametrize("command", ["check", "understood"])
def test_parts_are_called_as_the_sheet_calls_them(tmp_path: Path, command: str, knocked: str, called: str) -> None:
    parts, *never = PARTS[called]
    sheet = tmp_path / "green.rules"
    sheet.write_text(SHEET.format(knocked=knocked, parts=parts), encoding="utf-8")
    told = run(command, sheet, *(["--pupils", "14"] if command == "check" else [])).stdout
    words = told.replace(str(tmp_path), "").replace("half of the", "").split()
    assert {called, called.replace("halves", "half")} & set(words)
    assert not set(never) & {word.strip(".,:;") for word in words}

"""That three whole sides take turns at a task cannot be said: each line that tries is answered with what can."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal.running import run

SHEET = """\
game Gate Watch
  ages 8 to 12
space
  court 20 m by 14 m, in one piece
sides
  guards, 4 to 8 players
  {others}
kit
  6 foam balls
  4 gates for guards, like a plastic pin
set-up
  gates on the back line of guards
  6 foam balls in the middle
play
  {throwers} underarm throw a foam ball at the gates
  {line}
when
  a gate is knocked: it stands up again and the thrower's side scores 1 point
finish
  after 3 min: more points wins, else a draw
  {finish}
"""
THREE, TWO = ("red and blue, 4 to 8 players each, mirrored", "red and blue"), ("red, 4 to 8 players", "red")
LIMIT = "a foam ball is held at most 10 s"


@pytest.mark.parametrize("parts", ["3 innings", "4 innings", "two halves"])
@pytest.mark.parametrize("others", [TWO, THREE])
def test_innings_are_of_two_sides(parts: str, others: tuple[str, str], tmp_path: Path) -> None:
    told = understood(tmp_path, others, LIMIT, f"{parts}, the sides change tasks")
    if others == THREE:
        assert "With 3 sides it is not clear who has whose task next" in told and "even number" not in told
    else:
        assert ("even number" in told) == (parts == "3 innings")


@pytest.mark.parametrize("line", ["all move on every round", "all move on every 2 min", "guards change every 2 min"])
def test_whole_sides_move_on_by_twos(line: str, tmp_path: Path) -> None:
    told = understood(tmp_path, THREE, line, "both at once: a draw")
    assert "whole sides take turns" in told and "All have the same task" not in told


def understood(folder: Path, others: tuple[str, str], line: str, finish: str) -> str:
    (folder / "gates.rules").write_text(
        SHEET.format(others=others[0], throwers=others[1], line=line, finish=finish), encoding="utf-8"
    )
    return " ".join(run("check", str(folder / "gates.rules")).output.split())

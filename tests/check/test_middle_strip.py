"""Who starts in a strip and stays there is in play from there, whoever's the strip is."""

from __future__ import annotations

from pathlib import Path

from tests.terminal.running import run

POND = """
game Heron Pond
space
  court 24 m by 12 m, in one piece
  pond strip: 6 m deep, across the middle
sides
  herons, 4 players
  frogs, 6 players
kit
  4 foam balls
set-up
  herons in the pond strip
  herons begin with 4 foam balls
play
  herons stay in the pond strip
  herons overarm throw a foam ball at the frogs
  herons fetch balls from the court
when
  a frog is hit: herons score 1 point
finish
  after 5 min: more points wins
"""


def test_who_stays_in_a_strip_in_the_middle_throws_from_there(tmp_path: Path) -> None:
    path = tmp_path / "pond.rules"
    path.write_text(POND.lstrip(), encoding="utf-8")
    said = " ".join(run("check", path).stdout.split())
    assert "Can win: herons." in said
    assert "never any herons" not in said
    assert "Where players start" not in said

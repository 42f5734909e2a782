"""A level score that is played on may outlast the lesson: that is told; one that is never settled a draw mends."""

from __future__ import annotations

import pytest

import library
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.staging.staging import stage
from grammar.finding import Finding, Severity
from library.granted import granted_sheet
from tests.interpreter.sheets import game_in

GAME = """
game Golden Goal
space
  court 20 m by 10 m, halved across
sides
  tern and gull, 4 to 8 players each, mirrored
kit
  2 footballs
  1 goal for each side
set-up
  goals on the back line of their side
  1 football in each half
play
  players stay in their half
  players kick a football into the goal of the other side{success}
  a ball is held at most 6 s
when
  {first}a ball goes into a goal: the kicker's side scores 1 point
finish
  after 4 min: more points wins, else {level}
"""


def of(code: str, success: str = "", first: str = "", level: str = "the next point wins") -> list[Finding]:
    game = game_in(GAME.format(success=success, first=first, level=level))
    made = staged(stage(game, library.norms(), library.kit_names()), granted_sheet()).value
    assert made is not None
    answer = foreseen(proved(made), library.norms(), library.kit_names())
    return [each for each in answer.findings if each.code == code]


@pytest.mark.parametrize(
    ("success", "severity"),
    [("", None), (", 1 in 90 succeed", Severity.NOTE), (", 1 in 9000 succeed", Severity.WARNING)],
)
def test_how_long_a_level_score_lasts_is_told(success: str, severity: Severity | None) -> None:
    found = of("F-long-round", success)
    assert [each.severity for each in found] == ([severity] if severity else [])
    assert not found or '"else a draw"' in found[0].hint


def test_what_is_offered_for_a_level_score_that_is_never_settled_mends_it() -> None:
    never = "in the first 2 min, "
    (found,) = of("C-endless", first=never)
    assert '"else a draw"' in found.hint and "add a clock" not in found.hint
    assert not of("C-endless", first=never, level="a draw")

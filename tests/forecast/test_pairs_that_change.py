"""Pairs who change tasks in a round: a side without points is not blamed, and nobody waits for a turn to the end."""

from __future__ import annotations

import pytest

import library
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.staging.staging import stage
from grammar.finding import Severity
from library.granted import granted_sheet
from tests.interpreter.sheets import game_in

PAIRS = """
game Pairs
space
  court 6 m by 3 m, in one piece
sides
  bowlers, 1 player
  gatherers, 1 player
  up to 14 pairs side by side
kit
  1 soft tennis ball
  3 pegs, like a plastic pin
set-up
  pegs on the back line of gatherers, close together
  bowlers begins with the ball
play
  bowlers roll a soft tennis ball at the pegs
  a missed ball goes back
  a scored ball goes back
  {change}
when
  a peg is knocked: it stands up again and the roller's side scores 1 point
finish
  after 6 min: more points wins, else a draw
"""


@pytest.mark.parametrize(
    ("change", "severity", "waits"),
    [
        ("bowlers change every 5 attempts", Severity.NOTE, False),
        ("bowlers change every minute", Severity.NOTE, False),
        ('"Keep the ball low."', Severity.WARNING, True),
    ],
)
def test_who_changes_has_the_tasks_of_both(change: str, severity: Severity, waits: bool) -> None:
    game = game_in(PAIRS.format(change=change))
    made = staged(stage(game, library.norms(), library.kit_names()), granted_sheet()).value
    assert made is not None
    answer = foreseen(proved(made), library.norms(), library.kit_names())
    (lost,) = [each for each in answer.findings if each.code == "C-unwinnable"]
    assert lost.severity is severity
    assert ("2 innings" in lost.hint) == (severity is Severity.NOTE)
    assert ("F-long-wait" in {each.code for each in answer.findings}) == waits

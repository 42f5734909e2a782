"""A side that holds the round up only where it would win by playing on is told, and has nothing to mend."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Severity
from tests.interpreter.sheets import game_in, net_in

SHEET = """
game Logs
space
  court 16 m by 10 m, in one piece
  stack base: 1 m deep, before each back line
sides
  robins and dunnocks, 3 players each, mirrored
kit
  {logs} logs, like a cone
set-up
  logs in the middle
play
  players take a log from the middle to their stack base
finish
  a side wins when it has {asked} logs in its stack base
"""


@pytest.mark.parametrize(
    ("logs", "asked", "severity"),
    [
        (3, 2, Severity.NOTE),  # who keeps the others from two has two
        (5, 3, Severity.NOTE),
        (4, 3, Severity.WARNING),  # two in hand keep the others from three, and win nothing
    ],
)
def test_who_would_win_by_playing_on_only_puts_it_off(logs: int, asked: int, severity: Severity) -> None:
    net = net_in(game_in(SHEET.format(logs=logs, asked=asked)), {"robins": 3, "dunnocks": 3})
    (found,) = [each for each in findings_told(check(net).findings, net) if each.code == "C-stall"]
    assert found.severity is severity
    assert ("nobody gains by it" in found.hint) == (severity is Severity.NOTE)

"""What is left of the court beside the places where nobody is touched is held against what players need."""

from __future__ import annotations

from math import exp

import pytest

from compose.staging.floor.touching import USUAL_STAY_S
from compose.staging.limit import Limit
from compose.staging.open_floor import OPEN_FLOOR
from grammar.finding import Finding, Severity
from tests.fit.test_fit import fitted
from tests.interpreter.sheets import game_in

SHEET = """
game Reeds
space
  court {long} m by {wide} m, in one piece
  reed zone: 3 m deep, before each side line{rules}
sides
  minnows, 10 to 28 players, each for themselves
  role otter: 3 players of minnows
play
  otters touch minnows
when
  a minnow is touched: that player becomes an otter and the otter becomes a player
finish
  play goes on until the clock stops
  after 3 min: nobody wins
"""
SAFE = ", nobody is touched there"


def open_floor(long_m: int, wide_m: int, rules: str) -> tuple[list[Limit], list[Finding]]:
    """The limit and the findings of the open floor, for a class of 27."""
    found = fitted(game_in(SHEET.format(long=long_m, wide=wide_m, rules=rules)))
    limits = [each for each in found.staging.limits if each.what == OPEN_FLOOR]
    return limits, [each for each in found.findings if each.code == "F-area" and OPEN_FLOOR in each.title]


def test_strips_that_leave_a_metre_of_water_are_told_with_their_line_and_a_source() -> None:
    """13 m2 for three otters and those of 24 minnows who are not among the reeds, 6 of 7 m deep, for 5 s at a time."""
    (limit,), (found,) = open_floor(13, 7, SAFE + ", at most 5 s there")
    inside = 6 / 7 * (1 - exp(-5 / USUAL_STAY_S))
    assert limit.there == pytest.approx(13 / (3 + 24 * (1 - inside / (inside + 1 / 7))))
    assert limit.broken and limit.sources and found.severity is Severity.WARNING
    assert "3 m2 the least" in found.title and "less deep" in found.hint
    assert [span.line for span in found.others] == [4]


def test_where_there_is_room_nothing_is_asked() -> None:
    (limit,), found = open_floor(24, 14, SAFE + ", at most 5 s there")
    assert limit.kept and not found


@pytest.mark.parametrize("rules", ["", ", at most 4 players there", ", nobody enters there"])
def test_without_a_safe_place_there_is_no_open_floor_besides_the_court(rules: str) -> None:
    assert open_floor(13, 8, rules) == ([], [])


def test_who_may_stay_in_a_safe_place_leaves_the_more_floor_to_the_others() -> None:
    """The shorter they may stay there the more are in the open at a time."""
    stays = (", at most 5 s there", ", at most 20 s there", "")
    left = [open_floor(13, 8, SAFE + stay)[0][0].there for stay in stays]
    assert left == sorted(left) and left[0] < left[-1]

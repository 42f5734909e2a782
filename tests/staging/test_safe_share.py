"""How long a safe place keeps somebody from being touched: by its floor, to whom it is shut, and for how long."""

from __future__ import annotations

from math import exp, isclose

import pytest

from compose.staging.floor.touching import USUAL_STAY_S, safe_share
from compose.staging.resolved import resolved
from grammar.core.values import PLAIN, Population, SideId
from tests.interpreter.sheets import game_in

SHEET = """
game Reeds
space
  court 20 m by 10 m, in one piece
  reed zone: 2 m deep, before each back line{rules}
sides
  foxes, 2 players
  hares, 4 to 20 players
play
  foxes touch hares
finish
  after 3 min: nobody wins
"""
FOXES, HARES = Population(SideId("foxes"), PLAIN), Population(SideId("hares"), PLAIN)


@pytest.mark.parametrize(
    ("rules", "part"),
    [
        ("", 0.0),
        (", nobody is touched there", 0.2),
        (", no foxes there", 0.2),
        (", no hares there", 0.0),
    ],
)
def test_a_safe_place_counts_by_its_floor(rules: str, part: float) -> None:
    play = resolved(game_in(SHEET.format(rules=rules))).play
    assert isclose(safe_share(play, HARES, FOXES), part)


def test_who_may_not_stay_is_in_the_open_the_sooner() -> None:
    """In the open as long as ever, of every stay inside what is left: renewal reward, time in over time in and out."""
    rules = ", nobody is touched there, at most 10 s there"
    play = resolved(game_in(SHEET.format(rules=rules))).play
    inside = 0.2 * (1 - exp(-10 / USUAL_STAY_S))
    assert isclose(safe_share(play, HARES, FOXES), inside / (inside + 0.8))


def test_islands_count_by_their_floor_all_together() -> None:
    sheet = SHEET.replace("before each back line{rules}", "in 5 places on the court, nobody is touched there")
    play = resolved(game_in(sheet)).play
    assert isclose(safe_share(play, HARES, FOXES), 5 * 2 * 2 / (20 * 10))

"""Things carried home one by one, and carriers who are touched on their way.

Source: drawing without replacement, the hypergeometric distribution, W. Feller, An Introduction to Probability Theory
and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. II.6 (from memory), what is drawn before the last of a kind being
negative hypergeometric, ch. II.12 there (from memory); of two waiting times that are exponential the one with rate a
comes first with chance a / (a + b), the same, vol. 2, ch. I (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import comb, isclose

import pytest

from tests.outside.whole_way import Played

DRAWING = """
game Draws
space
  court 16 m by 9 m, halved across
  home base: before each back line
sides
  north and south, 1 player each
kit
  {logs} logs, like a cone
  {stones} stones, like a box
set-up
  logs in the middle
  stones in the middle
play
  players of north take a target from the middle to their home base
finish
"""
DRAWS = (
    DRAWING
    + """  north wins when it has {wanted} logs in its home base
  south wins when north has {wanted} stones in its home base
"""
)
COUNTED = (
    DRAWING
    + """  at the end stones in the home base score 2 points
  at the end stones in the middle score {left} points for south
  the round ends when there are no logs in the middle, more points wins
"""
)

CHASE = """
game Chase
space
  court 16 m by 9 m, in one piece
  home base: before each back line
sides
  north, 1 player
  south, {chasers} players
kit
  1 log, like a cone
set-up
  log in the middle
play
  players of north take a log from the middle to their home base
  players of south touch players of the other side who carry a log, 1 in 1 succeed, 6 times a minute
when
  a player is touched: {follows}
finish
  north wins when it has 1 log in its home base
  south wins when the other side has no players in
"""


def first_of_a_majority(logs: int, stones: int, wanted: int) -> Fraction:
    """The chance that `wanted` logs come before as many stones: that the first 2 * wanted - 1 hold as many logs."""
    draws = 2 * wanted - 1
    ways = sum(comb(logs, k) * comb(stones, draws - k) for k in range(wanted, draws + 1))
    return Fraction(ways, comb(logs + stones, draws))


def drawn_before_the_last(logs: int, stones: int) -> list[Fraction]:
    """The chances that 0, 1, 2 ... stones come before the last log: the negative hypergeometric distribution."""
    ways = comb(logs + stones, logs)
    return [Fraction(comb(drawn + logs - 1, logs - 1), ways) for drawn in range(stones + 1)]


def homeward(played: Played) -> float:
    """How often a minute one carrier would be home."""
    carries = [each.attempt.skill == "carry" for each in played.net.transitions]
    return float(played.constants[carries.index(True)])


@pytest.mark.parametrize(("logs", "stones", "wanted"), [(4, 6, 2), (3, 3, 2), (5, 4, 3), (7, 3, 3)])
def test_what_is_carried_home_is_drawn_without_replacement(logs: int, stones: int, wanted: int) -> None:
    played = Played(DRAWS.format(logs=logs, stones=stones, wanted=wanted), {"north": 1, "south": 1})
    assert isclose(played.wins("north"), first_of_a_majority(logs, stones, wanted), rel_tol=1e-9)


@pytest.mark.parametrize(("logs", "stones", "left"), [(1, 4, 2), (2, 5, 3), (3, 6, 5)])
def test_what_lies_there_at_the_end_decides(logs: int, stones: int, left: int) -> None:
    played = Played(COUNTED.format(logs=logs, stones=stones, left=left), {"north": 1, "south": 1})
    drawn = drawn_before_the_last(logs, stones)
    ahead = sum((chance for home, chance in enumerate(drawn) if 2 * home > left * (stones - home)), Fraction(0))
    behind = sum((chance for home, chance in enumerate(drawn) if 2 * home < left * (stones - home)), Fraction(0))
    assert sum(drawn) == 1 and isclose(played.wins("north"), ahead, rel_tol=1e-9)
    assert isclose(played.wins("south"), behind, rel_tol=1e-9)


@pytest.mark.parametrize("chasers", [1, 2, 5])
def test_a_carrier_is_home_before_the_chase_ends_as_two_waiting_times_race(chasers: int) -> None:
    played = Played(CHASE.format(chasers=chasers, follows="that player is out"), {"north": 1, "south": chasers})
    home = homeward(played)
    assert isclose(played.wins("north"), home / (home + 6 * chasers), rel_tol=1e-9)


def test_a_carrier_who_has_to_begin_anew_is_touched_as_often_as_runs_that_fail_before_the_first_success() -> None:
    """The failures before the first success of chance p are (1 - p) / p on average (geometric distribution)."""
    played = Played(CHASE.format(chasers=2, follows="the log goes back"), {"north": 1, "south": 2})
    home = homeward(played)
    assert isclose(played.wins("north"), 1.0, rel_tol=1e-9)
    touched = played.happens(lambda each: each.attempt.skill == "touch" and each.outcome == "success")
    assert isclose(touched, 12 / home, rel_tol=1e-9)

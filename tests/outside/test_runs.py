"""Success runs: the wait for so many successes in a row, after each of which they are counted anew.

Source: W. Feller, An Introduction to Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. XIII.7
(success runs; mean (7.7) and variance of the recurrence time, and runs of either kind; from memory).
"""

from __future__ import annotations

import math

import pytest

from compose.forecast.chain.exact import exact_course
from tests.outside.whole_way import Played

PASSING = """
game Passing
space
  court 10 m by 6 m, halved across
sides
  north and south, 2 players each
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
play
  players stay in their half
  north players pass a soft ball to a team-mate, {north} in 10 succeed, 1 times a minute
  south players pass a soft ball to a team-mate, {south} in 10 succeed, 1 times a minute
  a ball rests in the half it came from
when
  {number} passes in a row: the passer's side scores 1 point
finish
  {finish}
"""


@pytest.mark.parametrize(("number", "tenths"), [(2, 5), (3, 8), (5, 7)])
def test_the_wait_for_a_run(number: int, tenths: int) -> None:
    """Passes come at rate 1, so that so many of them take that time on average; the variances add up."""
    text = PASSING.format(north=tenths, south=0, number=number, finish="the first side to 1 point wins")
    game = Played(text, {"north": 2, "south": 2})
    p, q = tenths / 10, 1 - tenths / 10
    passes = (1 - p**number) / (q * p**number)
    variance = 1 / (q * p**number) ** 2 - (2 * number + 1) / (q * p**number) - p / q**2
    assert game.absorbed.mean == pytest.approx(passes, rel=1e-9)
    assert game.absorbed.deviation == pytest.approx(math.sqrt(variance + passes), rel=1e-6)


@pytest.mark.parametrize("number", [2, 3])
def test_runs_counted_anew_are_renewals(number: int) -> None:
    """In the long run one point comes in as many passes as a run takes on average."""
    text = PASSING.format(north=6, south=0, number=number, finish="the first side to 20 points wins")
    game = Played(text, {"north": 2, "south": 2})
    p, q = 0.6, 0.4
    assert game.absorbed.mean == pytest.approx(20 * (1 - p**number) / (q * p**number), rel=1e-9)


def test_two_sides_race_to_a_run() -> None:
    """Each side's own run; of equals each is first as often, and the other's passes do not break it."""
    text = PASSING.format(north=7, south=7, number=3, finish="the first side to 1 point wins")
    game = Played(text, {"north": 2, "south": 2})
    assert game.wins("north") == pytest.approx(0.5, abs=1e-12)
    course = exact_course(game.space, game.constants, 30.0)
    assert course.by_end.sum() == pytest.approx(1.0, abs=1e-9)

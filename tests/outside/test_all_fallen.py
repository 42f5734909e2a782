"""The round is over when everything of a kind has fallen, of all sides together: who knocked more has won.

Each of n falls to either side with chance 1/2, so that the numbers are binomial (W. Feller, An Introduction to
Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. VI; from memory); at a rate of 2a for both
together the last falls after n / 2a on average.
"""

from __future__ import annotations

from math import comb

import pytest

from tests.outside.whole_way import Played

WALL = """
game Wall
space
  court 10 m by 6 m, halved across
sides
  north and south, 1 player each, mirrored
kit
  2 soft balls, like a foam ball
  {boxes}
set-up
  1 soft ball in each half
  boxes on the middle line
play
  players stay in their half
  players kick a soft ball at the boxes, 1 in 2 succeed, 6 times a minute
  a ball rests in the half it came from
when
  a box is knocked: it stays down and the kicker's side scores 1 point
finish
  when all boxes are down, more points win
"""


@pytest.mark.parametrize("number", [2, 3, 5])
def test_who_knocked_more_of_what_is_nobodys(number: int) -> None:
    game = Played(WALL.format(boxes=f"{number} boxes"), {"north": 1, "south": 1})
    level = 0.0 if number % 2 else comb(number, number // 2) / 2**number
    assert game.space.states == (number + 1) * (number + 2) // 2
    assert game.wins("north") == pytest.approx((1 - level) / 2, rel=1e-9)
    assert game.absorbed.mean == pytest.approx(number / 6, rel=1e-9)


def test_those_of_both_sides_count_together() -> None:
    """One of each side: the round goes on when one has fallen, and both then have a point."""
    text = WALL.format(boxes="1 box for each side")
    game = Played(text.replace("on the middle line", "on the back line of their side"), {"north": 1, "south": 1})
    assert game.wins("north") == pytest.approx(0.0)
    assert game.absorbed.mean == pytest.approx(1 / 6 + 1 / 3, rel=1e-9)

"""Lives as fortunes: one is lost to the other side with each hit, until somebody has none left.

Sources: W. Feller, An Introduction to Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. XIV.2
(the classical ruin problem; from memory); the problem of points, 2 against 3 needed, 11/16 (Pascal and Fermat, 1654;
from memory); C. M. Grinstead and J. L. Snell, Introduction to Probability, 2nd ed., 1997, ch. 12 (gambler's ruin).
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import numpy as np
import pytest

from compose.forecast.chain.exact import exact_course
from tests.outside.whole_way import Played

DUEL = """
game Duel
space
  court 10 m by 6 m, halved across
sides
  north and south, 1 to 9 players each
  {lives}
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
play
  players stay in their half
  north players underarm throw a soft ball at the players of south, {north} in 10 succeed, 1 times a minute
  south players underarm throw a soft ball at the players of north, {south} in 10 succeed, 1 times a minute
  a ball rests in the half it came from
when
  {rules}
finish
  a side wins when the other side has no players in
"""


def ruin(fortune: int, total: int, win: float) -> float:
    """The chance to come to the whole total before nothing, winning each play with chance `win`."""
    if win == 0.5:
        return fortune / total
    ratio = (1 - win) / win
    return (1 - ratio**fortune) / (1 - ratio**total)


@pytest.mark.parametrize(("north", "south"), [(5, 5), (6, 3), (2, 6)])
def test_a_life_won_for_each_taken_is_gamblers_ruin(north: int, south: int) -> None:
    """Nobody has more than three; once lives are 3 and 1 they add up to 4 for good, and the rest is ruin of 4."""
    rules = "a player is hit: that player loses a life and the thrower gets a life back"
    game = Played(
        DUEL.format(lives="each player has 3 lives", north=north, south=south, rules=rules), {"north": 1, "south": 1}
    )
    p = north / (north + south)
    q = 1 - p
    ahead, behind = ruin(3, 4, p), ruin(1, 4, p)
    # With 3 and 2 lives: one more hit makes it 3 and 1, one of the other side 2 and 3.
    first = (p * ahead + q * q * behind) / (1 - p * q)
    second = q * behind + p * first
    assert game.wins("north") == pytest.approx(p * first + q * second, abs=1e-12)


def test_who_first_takes_all_lives_is_the_problem_of_points() -> None:
    lives = "each player of north has 3 lives\n  each player of south has 2 lives"
    rules = "a player is hit: that player loses a life"
    game = Played(DUEL.format(lives=lives, north=5, south=5, rules=rules), {"north": 1, "south": 1})
    assert game.wins("north") == pytest.approx(float(Fraction(11, 16)), abs=1e-12)


@cache
def still_in(lives: tuple[int, ...], hits: int) -> Fraction:
    """How many pupils, each with their own lives, are still in after so many hits on one of those who are in."""
    within = [number for number, left in enumerate(lives) if left]
    if hits == 0 or not within:
        return Fraction(len(within))
    after = (tuple(left - (number == hit) for number, left in enumerate(lives)) for hit in within)
    return sum((still_in(each, hits - 1) for each in after), Fraction(0)) / len(within)


def test_pupils_by_lives_left_are_counted_as_if_each_had_a_name() -> None:
    """Three pupils of two lives, hit one at a time: six hits at rate 1/2 in all, and as many left as by name."""
    rules = "a player is hit: that player loses a life"
    text = DUEL.format(lives="each player of south has 2 lives", north=5, south=0, rules=rules)
    game = Played(text + "  after 5 min: nobody wins\n", {"north": 1, "south": 3})
    course = exact_course(game.space, game.constants, 30.0)
    mean = 0.5 * 5
    poisson = [np.exp(-mean) * mean**k / float(np.prod(np.arange(1, k + 1))) for k in range(60)]
    assert course.by_end.sum() == pytest.approx(1 - sum(poisson[:6]), abs=1e-9)
    free = Played(text, {"north": 1, "south": 3})
    assert free.absorbed.mean == pytest.approx(6 / 0.5, rel=1e-9)
    playing = [
        n
        for n, place in enumerate(game.net.places)
        if place.token == "player" and place.side == "south" and place.lives
    ]
    expected = 0.0
    for hits in range(6):  # the mean time with so many hits behind: the integral of the Poisson chance over 5 minutes
        time = 2.0 * (1 - sum(poisson[: hits + 1]))
        expected += time * float(still_in((2, 2, 2), hits))
    assert float(course.tokens[playing].sum()) == pytest.approx(expected, abs=1e-9)

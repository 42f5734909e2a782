"""Targets knocked down one after the other, with throws at all of them or only at those that stand.

Source: the coupon collector's problem, W. Feller, An Introduction to Probability Theory and Its
Applications, vol. 1, 3rd ed., Wiley 1968, ch. IX (from memory); the pure death process, S. Karlin and
H. M. Taylor, A First Course in Stochastic Processes, 2nd ed., Academic Press 1975, ch. 4 (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import comb, exp

import pytest

from grammar.words import count
from tests.outside.whole_way import Played

KNOCK_DOWN = """
game Knock Down
space
  court 16 m by 9 m, halved across
sides
  north and south, 1 to 20 players each
kit
  {balls}, like a foam ball
  {cones} for south
set-up
  {balls} in the half of north
  cones on the back line of south
play
  players stay in their half
  north players roll a soft ball at the cones of south{order}, {tenths} in 10 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a cone is knocked: it stays down
finish
  north wins when south has no cones standing
  {clock}
"""

BOTH_CLEAR = """
game Both Clear
space
  court 16 m by 9 m, halved across
sides
  north and south, 1 player each, mirrored
kit
  2 soft balls, like a foam ball
  {n} cones for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players stay in their half
  players roll a soft ball at the cones of the other side, 1 in 1 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a cone is knocked: it stays down
finish
  a side wins when the other side has no cones standing
"""


def knock_down(n: int, throwers: int, order: str = "", tenths: int = 10, clock: str = "") -> Played:
    """So many throwers, each with a ball and one throw a minute."""
    balls, cones = count(throwers, "soft ball"), count(n, "cone")
    text = KNOCK_DOWN.format(cones=cones, balls=balls, order=order, tenths=tenths, clock=clock)
    return Played(text, {"north": throwers, "south": 1})


def harmonic(n: int) -> Fraction:
    return sum((Fraction(1, k) for k in range(1, n + 1)), Fraction(0))


def test_closed_form_gives_the_published_values() -> None:
    assert [n * harmonic(n) for n in (3, 5, 6, 7)] == [
        Fraction(11, 2),
        Fraction(137, 12),
        Fraction(147, 10),
        Fraction(363, 20),
    ]


@pytest.mark.parametrize("n", [1, 3, 5, 6, 7, 10])
def test_throws_at_any_of_them_standing_or_not(n: int) -> None:
    """n H_n throws, as a throw picks each of the n with the same chance."""
    played = knock_down(n, 1, " standing or not")
    assert played.space.states == n + 1
    assert played.happens(lambda transition: True) == pytest.approx(float(n * harmonic(n)), rel=1e-12)
    assert played.absorbed.mean == pytest.approx(float(n * harmonic(n)), rel=1e-12)
    variance = sum((1 - Fraction(k, n)) / Fraction(k, n) ** 2 for k in range(1, n + 1))
    exponential = sum(Fraction(n, k) ** 2 for k in range(1, n + 1))
    assert exponential - variance == n * harmonic(n)  # a minute's wait for each throw, instead of one throw
    assert played.absorbed.deviation**2 == pytest.approx(float(exponential), rel=1e-7, abs=1e-6)


@pytest.mark.parametrize("n", [1, 5, 6, 10])
def test_each_falls_by_itself(n: int) -> None:
    """n throwers, each throw at one of n: every standing target falls once a minute, so all are down after H_n."""
    played = knock_down(n, n, " standing or not")
    assert played.absorbed.mean == pytest.approx(float(harmonic(n)), rel=1e-12)


@pytest.mark.parametrize(("n", "tenths", "minutes"), [(6, 5, 5), (10, 10, 2)])
def test_all_down_by_the_whistle(n: int, tenths: int, minutes: int) -> None:
    """(1 - e^(-mu t))^n, and n e^(-mu t) still standing on average."""
    played = knock_down(n, n, " standing or not", tenths, f"after {minutes} min: a draw")
    still = exp(-tenths / 10 * minutes)
    assert (1 - exp(-2.5)) ** 6 == pytest.approx(0.598156470770, abs=1e-12)
    until = played.until(minutes)
    assert 1 - until.running == pytest.approx((1 - still) ** n, abs=1e-9)
    standing = [place.name for place in played.net.places].index("target/cone/south/standing")
    counts = played.space.encoding.markings(played.space.codes[played.chain.running])[:, standing]
    assert float(until.at_bell @ counts) == pytest.approx(n * still, abs=1e-9)


@pytest.mark.parametrize("n", [3, 5, 6])
def test_two_sides_clear_each_other_at_the_same_rate(n: int) -> None:
    """The shorter of two Erlang times, in minutes: 33/16 for three, 965/256 for five, 2379/512 for six."""
    text = BOTH_CLEAR.format(n=n)
    played = Played(text, {"north": 1, "south": 1})
    # Of the first i + j falls i are on one side; each takes half a minute on average.
    mean = sum(comb(i + j, i) * Fraction(1, 2) ** (i + j + 1) for i in range(n) for j in range(n))
    assert mean == {3: Fraction(33, 16), 5: Fraction(965, 256), 6: Fraction(2379, 512)}[n]
    assert played.absorbed.mean == pytest.approx(float(mean), rel=1e-12)
    assert played.wins("north") == pytest.approx(0.5, abs=1e-12)

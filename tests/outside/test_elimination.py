"""Elimination without return: whoever is hit is out for the round, everybody has a ball.

Sources: D. Williams and P. McIlroy, "The OK Corral and the power of the law", Bulletin of the London
Mathematical Society 30, 1998, 166-170, and J. F. C. Kingman, "Martingales in the OK Corral", ibid. 31,
1999, 601-606 (citations read); F. W. Lanchester, Aircraft in Warfare, 1916, square law (from memory);
R. H. Brown, "Theory of combat: the probability of winning", Operations Research 11(3), 1963 (abstract
read). Values are worked out here from the recurrence and from the alternating sum.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from math import factorial, gamma, pi, sqrt

import pytest

from tests.outside.whole_way import Played

LAST_STANDING = """
game Last Standing
space
  court 30 m by 20 m, halved across
sides
  north and south, 1 to 40 players each
kit
  80 soft balls, like a foam ball
set-up
  40 soft balls in each half
play
  players stay in their half
  north players underarm throw a soft ball at the players of south, 1 in 1 succeed, {north} times a minute
  south players underarm throw a soft ball at the players of north, 1 in 1 succeed, {south} times a minute
  a ball rests in the half it came from
when
  a player is hit: that player is out
finish
  a side wins when the other side has no players in
"""


def duel(north: int, south: int, quick_north: float = 1, quick_south: float = 1) -> Played:
    """So many against so many; each player hits so often a minute."""
    text = LAST_STANDING.format(north=f"{quick_north:g}", south=f"{quick_south:g}")
    return Played(text, {"north": north, "south": south})


def survivors_law(m: int, n: int, s: int = 1) -> Fraction:
    """Chance that the m win with at least s left: the two sides run down on clocks of their own."""
    terms = (
        Fraction(
            (-1) ** (m - k) * k ** (m + n - s) * factorial(k), factorial(k - s) * factorial(m - k) * factorial(n + k)
        )
        for k in range(s, m + 1)
    )
    return sum(terms, Fraction(0))


@cache
def recurrence(m: int, n: int, quick: Fraction = Fraction(1)) -> Fraction:
    """Brown's recurrence: the next hit is made by the m with chance quick * m / (quick * m + n)."""
    if not m or not n:
        return Fraction(1 if m else 0)
    hit = quick * m / (quick * m + n)
    return hit * recurrence(m, n - 1, quick) + (1 - hit) * recurrence(m - 1, n, quick)


def mean_survivors(n: int) -> Fraction:
    return 2 * sum((survivors_law(n, n, s) for s in range(1, n + 1)), Fraction(0))


def test_closed_forms_agree_and_give_the_published_values() -> None:
    assert all(survivors_law(m, n) == recurrence(m, n) for m in range(1, 7) for n in range(1, 7))
    assert (recurrence(3, 2), recurrence(5, 4)) == (Fraction(31, 40), Fraction(51907, 72576))
    assert [mean_survivors(n) for n in (2, 3, 5)] == [Fraction(5, 3), Fraction(34, 15), Fraction(30427, 9072)]
    assert float(mean_survivors(10)) == pytest.approx(5.71514747497352, abs=1e-12)


@pytest.mark.parametrize("n", [2, 3, 5, 10])
def test_survivors_of_even_sides(n: int) -> None:
    played = duel(n, n)
    assert played.space.states == (n + 1) ** 2 - 1
    assert played.wins("north") == pytest.approx(0.5, abs=1e-12)
    left = sum(
        count * p for place in ("north", "south") for (_, count), p in played.at_end(f"player/{place}/-/in").items()
    )
    assert left == pytest.approx(float(mean_survivors(n)), rel=1e-10)


@pytest.mark.parametrize(("m", "n"), [(3, 2), (5, 4), (4, 5), (3, 5), (10, 9)])
def test_uneven_sides(m: int, n: int) -> None:
    assert duel(m, n).wins("north") == pytest.approx(float(survivors_law(m, n)), abs=1e-11)


@pytest.mark.parametrize(("m", "n", "quick"), [(3, 4, 2), (5, 7, 2), (2, 5, 3)])
def test_uneven_arms(m: int, n: int, quick: int) -> None:
    assert duel(m, n, quick).wins("north") == pytest.approx(float(recurrence(m, n, Fraction(quick))), abs=1e-11)


def test_how_long_it_lasts() -> None:
    """Five against five: mean time and the chance that it is over, in minutes."""
    played = duel(5, 5)
    assert played.absorbed.mean == pytest.approx(float(Fraction(128281, 120960)), rel=1e-11)
    for minutes, over in ((0.5, 0.131314971305), (1, 0.546107935379), (2, 0.929929260430)):
        assert 1 - played.until(minutes).running == pytest.approx(over, abs=1e-9)


def test_survivors_grow_with_the_power_three_quarters() -> None:
    """Mean survivors over n^(3/4) rise to 2 * 3^(-1/4) * Gamma(3/4) / sqrt(pi) = 1.0507."""
    limit = 2 * 3**-0.25 * gamma(0.75) / sqrt(pi)
    ratios = []
    for n in (5, 10, 20, 40):
        ends = duel(n, n).at_end("player/north/-/in")
        ratios.append(2 * sum(count * p for (_, count), p in ends.items()) / n**0.75)
    assert ratios == sorted(ratios) and limit * 0.97 < ratios[-1] < limit == pytest.approx(1.05065115219)


def test_numbers_count_more_than_speed() -> None:
    """Lanchester's square law, in its direction: twice as many beat twice as quick, and four times as quick balance."""
    assert duel(6, 3).wins("north") > duel(3, 3, 2).wins("north") + 0.15
    assert abs(duel(8, 4, 1, 4).wins("north") - 0.5) < 0.1


@pytest.mark.parametrize(("times", "win"), [(1, 0.7152088845), (4, 0.8753399082), (8, 0.9487)])
def test_larger_sides_come_nearer_to_the_square_law(times: int, win: float) -> None:
    """5 to 4: with more players the greater side wins more surely, and keeps nearly 3 in 5 of its lead."""
    played = duel(5 * times, 4 * times)
    assert played.wins("north") == pytest.approx(float(survivors_law(5 * times, 4 * times)), abs=1e-9)
    assert played.wins("north") == pytest.approx(win, abs=1e-4)

"""Ruin: two sides take players or markers from each other, one at a time, until one has none.

Sources: C. M. Grinstead and J. L. Snell, Introduction to Probability, 2nd ed., American Mathematical
Society 1997, sec. 11.2 (drunkard's walk) and ch. 12 (gambler's ruin); W. Feller, An Introduction to
Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. XIV (from memory);
P. A. P. Moran, "Random processes in genetics", Proceedings of the Cambridge Philosophical Society 54,
1958 (from memory); A. Engel, "The computer solves the three tower problem", American Mathematical
Monthly 100, 1993, 62-64 (abstract read).
"""

from __future__ import annotations

from fractions import Fraction
from math import comb

import pytest

from tests.outside.whole_way import Played

CHANGE_SIDES = """
game Change Sides
space
  court 10 m by 6 m, halved across
sides
  north and south, 1 to 100 players each
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
play
  players stay in their half
  north players underarm throw a soft ball at the players of south, {north} in 100 succeed, 1 times a minute
  south players underarm throw a soft ball at the players of north, {south} in 100 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a player is hit: that player joins the other side
finish
  a side wins when the other side has no players in
"""

CAPTURE = """
game Capture
space
  court 10 m by 6 m, halved across
sides
  north and south, 1 player each
kit
  2 soft balls, like a foam ball
  3 markers for each side, like a cone
set-up
  1 soft ball in each half
  markers on the back line of their side
play
  players stay in their half
  north players roll a soft ball at the markers of south, 3 in 5 succeed, 1 times a minute
  south players roll a soft ball at the markers of north, 2 in 5 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a marker is knocked: it joins the roller's side
finish
  a side wins when the other side has no markers standing
"""

THREE_TOWERS = """
game Three Towers
space
  court 12 m by 12 m, in equal parts
sides
  ash, beech and elm, 1 to 20 players each
kit
  1 soft ball for each side, like a foam ball
set-up
  1 soft ball in each half
play
  players stay in their half
  players underarm throw a soft ball at the players of the other side, 1 in 1 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a player is hit: that player joins the thrower's side
finish
  {finish}
"""


def ruin(p: Fraction, k: int, n: int) -> tuple[Fraction, Fraction]:
    """Chance that one who has k of n wins all, and the mean number of single wins, each with chance p."""
    if p == Fraction(1, 2):
        return Fraction(k, n), Fraction(k * (n - k))
    odds = (1 - p) / p
    win = (1 - odds**k) / (1 - odds**n)
    return win, (n * win - k) / (2 * p - 1)


def test_closed_form_gives_the_published_values() -> None:
    assert [ruin(Fraction(1, 2), k, 4)[1] for k in (1, 2, 3)] == [3, 4, 3]
    assert ruin(Fraction(2, 3), 2, 4) == (Fraction(4, 5), Fraction(18, 5))
    assert ruin(Fraction(3, 5), 3, 6) == (Fraction(27, 35), Fraction(57, 7))
    assert ruin(Fraction(2, 5), 5, 10) == (Fraction(32, 275), Fraction(211, 11))
    assert ruin(Fraction(9, 20), 9, 10)[0] == 1 - Fraction(2357947691, 11225320100)


@pytest.mark.parametrize(
    ("p", "k", "n"),
    [(50, 1, 4), (50, 2, 4), (50, 3, 4), (50, 3, 6), (50, 2, 7), (60, 3, 6), (40, 5, 10), (45, 9, 10)],
)
def test_ruin_by_players_who_change_sides(p: int, k: int, n: int) -> None:
    played = Played(CHANGE_SIDES.format(north=p, south=100 - p), {"north": k, "south": n - k})
    win, hits = ruin(Fraction(p, 100), k, n)
    assert played.space.states == n + 1
    assert played.wins("north") == pytest.approx(float(win), abs=1e-9)
    assert played.wins("south") == pytest.approx(1 - float(win), abs=1e-9)
    assert played.steps() == pytest.approx(float(hits), rel=1e-9)


def test_ruin_by_markers_that_are_taken_over() -> None:
    played = Played(CAPTURE, {"north": 1, "south": 1})
    assert played.wins("north") == pytest.approx(27 / 35, abs=1e-12)
    assert played.steps() == pytest.approx(57 / 7, abs=1e-9)


def test_a_long_fair_ruin_is_not_cut_short() -> None:
    """Fair, 90 against 10: 900 hits on average; where an iteration stops too early it shows here."""
    played = Played(CHANGE_SIDES.format(north=50, south=50), {"north": 90, "south": 10})
    assert played.wins("north") == pytest.approx(0.9, abs=1e-8)
    assert played.steps() == pytest.approx(900, rel=1e-9)


def test_fixation_of_the_fitter_side() -> None:
    """Moran: of N, i on the side that hits r times as often take over with (1 - r^-i) / (1 - r^-N)."""
    for r, i, size in ((Fraction(2), 1, 10), (Fraction(11, 10), 5, 10), (Fraction(1), 5, 10)):
        text = CHANGE_SIDES.format(north=100, south=100).replace("1 times a minute", f"{float(r):g} times a minute", 1)
        taken = Fraction(i, size) if r == 1 else (1 - r**-i) / (1 - r**-size)
        assert Played(text, {"north": i, "south": size - i}).wins("north") == pytest.approx(float(taken), abs=1e-9)
    assert (1 - Fraction(1, 2)) / (1 - Fraction(1, 2**10)) == Fraction(512, 1023)


@pytest.mark.parametrize(("r", "i", "size"), [(1, 3, 8), (2, 3, 8), (3, 2, 9)])
def test_everybody_with_a_ball_takes_over_as_a_birth_and_death_chain(r: int, i: int, size: int) -> None:
    """With a ball for everybody the rates are r*i up and N - i down (S. Karlin and H. M. Taylor, A First
    Course in Stochastic Processes, 2nd ed. 1975, ch. 4, from memory): sums of C(N - 1, k) r^-k."""
    text = CHANGE_SIDES.format(north=100, south=100).replace("1 soft ball in each half", "20 soft balls in each half")
    text = text.replace("2 soft balls", "40 soft balls").replace("100 succeed, 1 times", f"100 succeed, {r} times", 1)
    weight = [Fraction(comb(size - 1, k), r**k) for k in range(size)]
    expected = float(sum(weight[:i]) / sum(weight))
    assert Played(text, {"north": i, "south": size - i}).wins("north") == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("sizes", [(1, 1, 1), (1, 1, 2), (2, 2, 2), (2, 3, 4), (3, 4, 5), (5, 5, 5)])
def test_three_sides_until_one_has_nobody(sizes: tuple[int, int, int]) -> None:
    """3abc / (a + b + c) hits until one of three is empty."""
    a, b, c = sizes
    text = THREE_TOWERS.format(finish="the round ends when a side has no players in")
    played = Played(text, {"ash": a, "beech": b, "elm": c})
    assert played.steps() == pytest.approx(3 * a * b * c / (a + b + c), rel=1e-9)


def test_three_sides_until_one_has_everybody() -> None:
    """ab + bc + ca hits until one has all, and each wins in proportion to its size."""
    text = THREE_TOWERS.format(finish="a side wins when the other side has no players in")
    played = Played(text, {"ash": 1, "beech": 2, "elm": 3})
    assert played.steps() == pytest.approx(11, rel=1e-9)
    for side, share in (("ash", 1 / 6), ("beech", 1 / 3), ("elm", 1 / 2)):
        assert played.wins(side) == pytest.approx(share, abs=1e-9)

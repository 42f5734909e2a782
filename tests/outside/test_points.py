"""Points: who gets there first, who is ahead at the whistle, and how long it takes.

Sources: B. Pascal and P. de Fermat, letters of 1654 (problem of points); the negative binomial law, W.
Feller, An Introduction to Probability Theory and Its Applications, vol. 1, 3rd ed., Wiley 1968, ch. VI,
and runs of successes, ch. XIII (both from memory); J. G. Skellam, "The frequency distribution of the
difference between two Poisson variates", Journal of the Royal Statistical Society 109, 1946 (from
memory). A game of tennis is worked out here from the recurrence that defines it.
"""

from __future__ import annotations

from fractions import Fraction
from math import comb, exp, factorial

import pytest

from tests.outside.whole_way import Played

RACE = """
game Race
space
  court 16 m by 9 m, halved across
sides
  north and south, 1 to 6 players each
kit
  2 rolling balls, like a soft volleyball
set-up
  1 rolling ball in each half
play
  players stay in their half
  north players roll a rolling ball past the back line of south, {north} in 100 succeed, 1 times a minute
  south players roll a rolling ball past the back line of north, {south} in 100 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a ball crosses the back line: the roller's side scores 1 point
  {more}
finish
  {finish}
"""

RUN_OF_SUCCESSES = """
game Run of Successes
space
  court 16 m by 9 m, halved across
sides
  north and south, 1 player each
kit
  1 soft ball, like a foam ball
  1 ring for each side, like a hanging hoop
set-up
  1 soft ball in the half of north
  ring behind the back line of their side
play
  players stay in their half
  north players underarm throw a soft ball through the ring of the other side, {p} in 10 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a ball goes through the ring: the thrower's side scores 1 point
  a ball is missed: the thrower's side loses {r} points
finish
  the first side to {r} points wins
"""


def race(north: int, south: int, finish: str, more: str = "") -> Played:
    """One player and one ball a side; of 100 attempts a minute so many cross the line."""
    return Played(RACE.format(north=north, south=south, finish=finish, more=more), {"north": 1, "south": 1})


def points_law(p: Fraction, a: int, b: int) -> tuple[Fraction, Fraction]:
    """Chance that a points come before b against them, and the mean number of points until one is there."""
    q = 1 - p
    win = sum((comb(a - 1 + k, k) * p**a * q**k for k in range(b)), Fraction(0))
    mean = sum((comb(a - 1 + k, k) * p**a * q**k * (a + k) for k in range(b)), Fraction(0))
    mean += sum((comb(b - 1 + k, k) * q**b * p**k * (b + k) for k in range(a)), Fraction(0))
    return win, mean


def test_closed_form_gives_the_published_values() -> None:
    half, three_fifths = Fraction(1, 2), Fraction(3, 5)
    shares = [points_law(half, a, b)[0] for a, b in ((2, 3), (1, 2), (1, 3))]
    assert shares == [Fraction(11, 16), Fraction(3, 4), Fraction(7, 8)]
    assert points_law(half, 5, 5) == (half, Fraction(965, 128))
    assert points_law(three_fifths, 5, 5)[0] == Fraction(286497, 390625)
    assert points_law(three_fifths, 4, 4)[1] == Fraction(17804, 3125)  # best of seven


@pytest.mark.parametrize(("a", "b"), [(1, 2), (1, 3), (2, 3), (2, 4), (3, 5)])
def test_problem_of_points(a: int, b: int) -> None:
    played = race(50, 50, f"north wins when it has {a} points\n  south wins when it has {b} points")
    win, mean = points_law(Fraction(1, 2), a, b)
    assert played.wins("north") == pytest.approx(float(win), abs=1e-12)
    assert played.steps() == pytest.approx(float(mean), abs=1e-9)


@pytest.mark.parametrize(("goal", "p"), [(2, 60), (3, 60), (4, 60), (5, 50), (5, 55), (5, 60), (11, 60), (21, 55)])
def test_race_to_so_many_points(goal: int, p: int) -> None:
    played = race(p, 100 - p, f"the first side to {goal} points wins")
    win, mean = points_law(Fraction(p, 100), goal, goal)
    assert played.wins("north") == pytest.approx(float(win), abs=1e-9)
    assert played.steps() == pytest.approx(float(mean), abs=1e-9)


def gamma_reached(goal: int, mean: float) -> float:
    """Chance that at least so many points of a Poisson stream have come: its mean says how many on average."""
    return 1 - sum(exp(-mean) * mean**k / factorial(k) for k in range(goal))


def test_race_with_a_clock() -> None:
    """Points come at 1 and 0.8 a minute; the chance that either has five of them by six minutes."""
    played = race(100, 80, "the first side to 5 points wins\n  after 6 min: more points wins, else a draw")
    over = 1 - (1 - gamma_reached(5, 6.0)) * (1 - gamma_reached(5, 4.8))
    assert over == pytest.approx(0.864239346446, abs=1e-12)
    until = played.until(6)
    assert 1 - until.running == pytest.approx(over, abs=1e-9)
    ends = dict(zip((end.winner for end in played.net.ends), until.by_end, strict=True))
    assert ends["north"] == pytest.approx(0.553301283116, abs=1e-9)


@pytest.mark.parametrize(("north", "south", "minutes"), [(100, 80, 5), (100, 80, 10), (100, 100, 3)])
def test_most_points_at_the_whistle(north: int, south: int, minutes: int) -> None:
    """The difference of two Poisson counts."""
    stats = pytest.importorskip("scipy.stats")
    played = race(north, south, f"after {minutes} min: more points wins, else a draw")
    lead = stats.skellam(north / 100 * minutes, south / 100 * minutes)
    until = played.until(minutes)
    assert played.net.bell is not None
    results = dict(zip((end.winner for end in played.net.bell.results), until.by_result, strict=True))
    # Points are counted up to 25 only, which the counts here pass with a chance below 1e-4.
    close = 1e-9 if minutes < 6 else 1e-4
    assert results["north"] == pytest.approx(lead.sf(0), abs=close)
    assert results["south"] == pytest.approx(lead.cdf(-1), abs=close)
    assert results[None] == pytest.approx(lead.pmf(0), abs=close)


def tennis(p: Fraction) -> tuple[Fraction, Fraction]:
    """Chance to win a game of tennis with chance p for each point, and its mean number of points."""
    q = 1 - p
    deuce_win, deuce_length = p**2 / (p**2 + q**2), 2 / (p**2 + q**2)
    win = sum((comb(3 + k, k) * p**4 * q**k for k in range(3)), Fraction(0))
    lose = sum((comb(3 + k, k) * q**4 * p**k for k in range(3)), Fraction(0))
    length = sum((comb(3 + k, k) * (p**4 * q**k + q**4 * p**k) * (4 + k) for k in range(3)), Fraction(0))
    deuce = 1 - win - lose
    return win + deuce * deuce_win, length + deuce * (6 + deuce_length)


@pytest.mark.parametrize("p", [50, 55, 60, 70])
def test_win_by_two(p: int) -> None:
    """Four points with two ahead; from four all it goes back to three all, so points do not grow for ever."""
    ways = " or ".join(f"it has at least {n} points and the other side has at most {n - 2} points" for n in (4, 5))
    back = "north has 4 points while south has 4 points: north loses 1 point and south loses 1 point"
    played = race(p, 100 - p, f"a side wins when {ways}", back)
    win, mean = tennis(Fraction(p, 100))
    assert played.wins("north") == pytest.approx(float(win), abs=1e-9)
    assert played.steps() == pytest.approx(float(mean), abs=1e-9)


def test_tennis_has_the_published_value() -> None:
    assert tennis(Fraction(3, 5))[0] == Fraction(29889, 40625)  # 0.735729...
    assert tennis(Fraction(2, 3)) == (Fraction(208, 243), Fraction(164, 27))


@pytest.mark.parametrize(("r", "tenths"), [(2, 5), (3, 5), (3, 6), (5, 7)])
def test_so_many_successes_in_a_row(r: int, tenths: int) -> None:
    """A miss takes all points away; the mean number of attempts until r in a row is (1 - p^r) / (q p^r)."""
    played = Played(RUN_OF_SUCCESSES.format(p=tenths, r=r), {"north": 1, "south": 1})
    p = Fraction(tenths, 10)
    attempts = played.happens(lambda transition: transition.side == "north")
    assert attempts == pytest.approx(float((1 - p**r) / ((1 - p) * p**r)), rel=1e-9)
    assert played.absorbed.mean == pytest.approx(attempts, rel=1e-9)

"""Odds, lengths and counts of the exact chain against closed forms."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest

from compose.forecast.chain.absorb import absorb
from tests.check.chance_games import duel, out_and_back, race, targets, three_towers, walk

EXACT = 1e-9


@pytest.mark.parametrize(
    ("start", "top", "right", "ruin", "steps"),
    [
        (1, 4, Fraction(1, 2), Fraction(3, 4), 3),
        (2, 4, Fraction(1, 2), Fraction(1, 2), 4),
        (3, 4, Fraction(1, 2), Fraction(1, 4), 3),
        (1, 4, Fraction(2, 3), Fraction(7, 15), Fraction(17, 5)),
        (3, 6, Fraction(3, 5), 1 - Fraction(27, 35), Fraction(57, 7)),
        (5, 10, Fraction(2, 5), 1 - Fraction(32, 275), Fraction(211, 11)),
        (9, 10, Fraction(9, 20), Fraction(2357947691, 11225320100), Fraction(1235415681, 112253201)),
        (900, 1000, Fraction(1, 2), Fraction(1, 10), 90_000),
    ],
)
def test_gambler_is_ruined(start: int, top: int, right: Fraction, ruin: Fraction, steps: Fraction) -> None:
    """Grinstead and Snell 1997, sec. 11.2 (drunkard's walk); Feller, vol. 1, 3rd ed. 1968, ch. XIV.2-3.

    At one step a minute the mean time is the mean number of steps.
    """
    result = absorb(walk(start, top, float(right), float(1 - right)).chain())
    assert result.by_end[1] == pytest.approx(float(ruin), rel=EXACT)
    assert result.mean == pytest.approx(float(steps), rel=EXACT)
    assert result.firings.sum() == pytest.approx(float(steps), rel=EXACT)
    assert result.chance_error < 1e-10 and result.time_error < EXACT * result.mean


@pytest.mark.parametrize("count", [3, 5, 6, 10])
def test_targets_chosen_at_random(count: int) -> None:
    """n * H_n throws, those at targets already down included (coupon collector, Feller ch. IX.3)."""
    harmonic = sum(Fraction(1, k) for k in range(1, count + 1))
    variance = sum(Fraction(count * (count - k), k * k) for k in range(1, count + 1))
    result = absorb(targets(count, 2.0, chosen_at_random=True).chain())
    assert result.firings.sum() == pytest.approx(float(count * harmonic), rel=EXACT)
    assert result.firings[0] == pytest.approx(count, rel=EXACT)
    assert result.mean == pytest.approx(float(count * harmonic) / 2, rel=EXACT)
    # Time is a sum of as many waits of mean 1/2 minute: its variance is E[N] / 4 + Var[N] / 4.
    assert result.deviation**2 == pytest.approx(float(count * harmonic + variance) / 4, rel=1e-7)


@pytest.mark.parametrize("count", [5, 6, 10])
def test_all_targets_at_once(count: int) -> None:
    """The last of n independent exponential times: mean H_n, variance the sum of 1/k^2."""
    result = absorb(targets(count, 1.0, chosen_at_random=False).chain())
    assert result.mean == pytest.approx(sum(1 / k for k in range(1, count + 1)), rel=EXACT)
    assert result.deviation**2 == pytest.approx(sum(1 / k**2 for k in range(1, count + 1)), rel=1e-8)
    assert result.tokens[0] == pytest.approx(count, rel=EXACT), "each stands for one mean time"


@pytest.mark.parametrize(("to", "p"), [(5, 0.5), (5, 0.6), (11, 0.55), (21, 0.6)])
def test_race_to_so_many_points(to: int, p: float) -> None:
    """Negative binomial: the winner has its last point after to + k points, k of them the other's."""
    won = [math.comb(to - 1 + k, k) * p**to * (1 - p) ** k for k in range(to)]
    lost = [math.comb(to - 1 + k, k) * (1 - p) ** to * p**k for k in range(to)]
    points = sum((to + k) * (won[k] + lost[k]) for k in range(to))
    result = absorb(race(to, p, 1 - p).chain())
    assert result.by_end[0] == pytest.approx(sum(won), rel=EXACT)
    assert result.mean == pytest.approx(points, rel=EXACT)


def test_problem_of_points() -> None:
    """Two points wanting against three: 11 to 5 (Pascal and Fermat, 1654)."""
    result = absorb(race(3, 1.0, 1.0, scored=(1, 0)).chain())
    assert result.by_end[0] == pytest.approx(11 / 16, rel=EXACT)
    assert result.mean == pytest.approx(25 / 8 / 2, rel=EXACT)


def survivors(players: int) -> list[Fraction]:
    """The chances of 1, 2, ... survivors of the winner, by recursion over who is hit next."""
    chance = {(players, players): Fraction(1)}
    left = [Fraction(0)] * (players + 1)
    for total in range(2 * players, 0, -1):
        for one in range(max(0, total - players), min(players, total) + 1):
            other, now = total - one, chance.get((one, total - one), Fraction(0))
            if one and other:
                for key, share in (((one - 1, other), other), ((one, other - 1), one)):
                    chance[key] = chance.get(key, Fraction(0)) + now * Fraction(share, total)
            else:
                left[total] += now
    return left[1:]


@pytest.mark.parametrize(
    ("players", "mean_left"),
    [(2, Fraction(5, 3)), (3, Fraction(34, 15)), (4, Fraction(178, 63)), (5, Fraction(30427, 9072))],
)
def test_shoot_out_leaves_so_many(players: int, mean_left: Fraction) -> None:
    """OK Corral process: D. Williams and P. McIlroy, Bull. London Math. Soc. 30 (1998) 166-170."""
    chances = survivors(players)
    assert sum((k + 1) * chance for k, chance in enumerate(chances)) == mean_left
    chain = duel(players, players).chain()
    result = absorb(chain)
    won = sum(chance for end, chance in zip(chain.space.net.ends, result.by_end, strict=True) if end.winner == "north")
    assert won == pytest.approx(0.5, rel=EXACT)
    # A hit takes one out: survivors are all who were in less the hits.
    assert 2 * players - result.firings.sum() == pytest.approx(float(mean_left), rel=EXACT)


@pytest.mark.parametrize(
    ("north", "south", "chance"),
    [(3, 2, Fraction(31, 40)), (5, 4, Fraction(51907, 72576)), (3, 5, Fraction(4541, 40320))],
)
def test_shoot_out_of_unequal_sides(north: int, south: int, chance: Fraction) -> None:
    """Kingman, Bull. London Math. Soc. 31 (1999) 601-606: the process; values by exact recursion."""
    result = absorb(duel(north, south).chain())
    assert result.by_end[0] == pytest.approx(float(chance), rel=EXACT)


def test_shoot_out_times() -> None:
    assert absorb(duel(3, 3).chain()).mean == pytest.approx(107 / 120, rel=EXACT)
    assert absorb(duel(5, 5).chain()).mean == pytest.approx(128281 / 120960, rel=EXACT)
    assert absorb(duel(3, 4, 2.0, 1.0).chain()).by_end[0] == pytest.approx(359 / 630, rel=EXACT)


@pytest.mark.parametrize(("players", "out", "back"), [(3, 1.0, 2.0), (5, 1.0, 1.0), (5, 1.0, 2.0), (8, 1.0, 2.0)])
def test_out_and_back_in(players: int, out: float, back: float) -> None:
    """Birth and death: first passage from k to k + 1 waiting, h_k = 1/up + down/up h_(k-1).

    S. Karlin and H. M. Taylor, A First Course in Stochastic Processes, 2nd ed. 1975, ch. 4 (from memory).
    """
    total = passage = 0.0
    for waiting in range(players):
        up, down = (players - waiting) * out, waiting * back
        passage = 1 / up + down / up * passage
        total += passage
    result = absorb(out_and_back(players, out, back).chain())
    assert result.mean == pytest.approx(total, rel=EXACT)
    assert result.tokens.sum() == pytest.approx(players * total, rel=EXACT)
    assert result.firings[0] - result.firings[1] == pytest.approx(players, rel=1e-8)


@pytest.mark.parametrize("heights", [(1, 1, 1), (1, 1, 2), (2, 3, 4), (5, 5, 5), (10, 10, 10)])
def test_three_towers(heights: tuple[int, int, int]) -> None:
    """3abc/(a+b+c) moves: A. Engel, American Mathematical Monthly 100 (1993) 62-64."""
    result = absorb(three_towers(heights).chain())
    assert result.firings.sum() == pytest.approx(3 * math.prod(heights) / sum(heights), rel=EXACT)
    assert result.by_end.sum() == pytest.approx(1, rel=EXACT)

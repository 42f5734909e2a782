"""Three sides of which two play: the winner stays on, or all meet all. Worked out by hand as small Markov chains.

Source: "winner stays" of three players is the old problem of Waldegrave: P. R. de Montmort, Essay d'analyse sur les
jeux de hazard, 2nd ed., 1713 (from memory); the numbers below are counted out here.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from math import isclose

import pytest

from compose.forecast.resting import all_meet_all, winner_stays


def by_hand(rounds: int, p: Fraction) -> tuple[list[Fraction], list[Fraction]]:
    """Every course of so many rounds without draws: who has won most alone, and how often each plays."""
    wins, plays = [Fraction(0)] * 3, [Fraction(0)] * 3
    for course in product((0, 1), repeat=rounds):
        seats, rest, won = [0, 1], 2, [0, 0, 0]
        chance = p ** course.count(0) * (1 - p) ** course.count(1)
        for winner in course:
            for group in seats:
                plays[group] += chance / rounds
            won[seats[winner]] += 1
            seats[1 - winner], rest = rest, seats[1 - winner]
        best = [group for group in range(3) if won[group] == max(won)]
        if len(best) == 1:
            wins[best[0]] += chance
    return wins, plays


@pytest.mark.parametrize("rounds", [1, 2, 3, 6, 9])
@pytest.mark.parametrize("p", [Fraction(1, 2), Fraction(2, 3)])
def test_winner_stays_as_counted_out_course_by_course(rounds: int, p: Fraction) -> None:
    wins, plays = by_hand(rounds, p)
    found = winner_stays(3, rounds, float(p), float(1 - p))
    assert all(isclose(mine, its, abs_tol=1e-12) for mine, its in zip(found.wins, wins, strict=True))
    assert all(isclose(mine, its, abs_tol=1e-12) for mine, its in zip(found.plays, plays, strict=True))
    assert isclose(sum(found.wins) + found.drawn, 1.0) and isclose(sum(found.plays), 2.0)


def test_three_equal_sides_that_all_meet_win_alike_and_one_time_in_four_nobody_has_won_most() -> None:
    """Of the 8 results of three matches without draws two go round in a circle, so that each has won once."""
    found = all_meet_all(3, 0.5, 0.5)
    assert all(isclose(each, 1 / 4) for each in found.wins) and isclose(found.drawn, 1 / 4)
    assert all(isclose(each, 2 / 3) for each in found.plays)


def test_after_a_draw_whoever_has_played_longer_rests() -> None:
    """Nothing but draws: 0 and 1 play, then 2 for 0, then 0 for 1, then 1 for 2: each plays two rounds of three."""
    found = winner_stays(3, 3, 0.0, 0.0)
    assert [round(each, 9) for each in found.plays] == [round(2 / 3, 9)] * 3
    assert isclose(found.drawn, 1.0)

"""Three or four sides: the winner stays on, all meet all, winners meet. Worked out by hand as small Markov chains.

Source: "winner stays" of three players is the old problem of Waldegrave: P. R. de Montmort, Essay d'analyse sur les
jeux de hazard, 2nd ed., 1713 (from memory); the numbers below are counted out here.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import product
from math import isclose

import pytest

import library
from compose.forecast.resting import all_meet_all, of_groups, winner_stays, winners_meet
from compose.net.match import match_of
from compose.staging.resolved import resolved
from tests.interpreter.sheets import game_in


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


def course_by_course(rounds: int, p: Fraction, q: Fraction) -> list[Fraction]:
    """Four groups on two courts, every course of so many rounds: winners to the first court, losers to the second."""
    drawn = 1 - p - q
    ways = (("first", p), ("second", q), ("lot first", drawn / 2), ("lot second", drawn / 2))
    wins = [Fraction(0)] * 4
    for course in product(product(ways, repeat=2), repeat=rounds):
        courts, won, chance = [["a", "b"], ["c", "d"]], dict.fromkeys("abcd", 0), Fraction(1)
        for results in course:
            ups, downs = [], []
            for (first, second), (result, likely) in zip(courts, results, strict=True):
                chance *= likely
                up, down = (first, second) if result.endswith("first") else (second, first)
                won[up] += not result.startswith("lot")
                ups.append(up)
                downs.append(down)
            courts = [ups, downs]
        best = [group for group, number in won.items() if number == max(won.values())]
        if len(best) == 1:
            wins["abcd".index(best[0])] += chance
    return wins


@pytest.mark.parametrize("rounds", [1, 2, 3])
@pytest.mark.parametrize(("p", "q"), [(Fraction(1, 2), Fraction(1, 2)), (Fraction(1, 2), Fraction(1, 5))])
def test_winners_meet_winners_as_counted_out_course_by_course(rounds: int, p: Fraction, q: Fraction) -> None:
    found = winners_meet(rounds, float(p), float(q))
    by_course = course_by_course(rounds, p, q)
    assert all(isclose(mine, its, abs_tol=1e-12) for mine, its in zip(found.wins, by_course, strict=True))
    assert isclose(sum(found.wins) + found.drawn, 1.0) and found.plays == (1.0,) * 4


def test_of_four_equal_sides_each_wins_the_final_one_time_in_four() -> None:
    """Two rounds without draws are a semi-final and a final: its winner alone has won both."""
    found = winners_meet(2, 0.5, 0.5)
    assert all(isclose(each, 1 / 4) for each in found.wins) and isclose(found.drawn, 0.0, abs_tol=1e-12)


def test_four_equal_sides_that_all_meet() -> None:
    """Of the 64 results of six matches a side has won all three in 8; where none has, several have won two."""
    found = all_meet_all(4, 0.5, 0.5)
    assert all(isclose(each, 8 / 64) for each in found.wins) and isclose(found.drawn, 1 / 2)


def test_meeting_twice_each_begins_as_either_side_once() -> None:
    """Whoever is on the first side always wins: each has won as often as it began there."""
    found = all_meet_all(3, 1.0, 0.0, times=2)
    assert isclose(found.drawn, 1.0)
    assert isclose(all_meet_all(3, 1.0, 0.0).wins[0], 1.0)


@pytest.mark.parametrize(
    ("line", "groups", "rounds", "plays"),
    [
        ("one side rests, all meet all", 3, 3, 2 / 3),
        ("one side rests, all meet all, 6 rounds", 3, 6, 2 / 3),
        ("two sides rest, all meet all", 4, 6, 1 / 2),
        ("four sides on two courts, all meet all", 4, 3, 1.0),
        ("four sides on two courts, all meet all, 6 rounds", 4, 6, 1.0),
        ("four sides on two courts, winners meet winners, 5 rounds", 4, 5, 1.0),
    ],
)
def test_how_often_each_plays_is_read_from_the_line(line: str, groups: int, rounds: int, plays: float) -> None:
    kilns = next(path for path in library.game_paths() if path.stem == "kiln-row").read_text(encoding="utf-8")
    match = match_of(resolved(game_in(kilns.replace("one side rests, the winner stays on, 6 rounds", line))))
    assert (match.groups, match.most_rounds, match.on_share) == (groups, rounds, plays)
    found = of_groups(match, 0.6, 0.3)
    assert all(isclose(each, plays) for each in found.plays)
    assert isclose(sum(found.wins) + found.drawn, 1.0)

"""From rounds to matches: best of n against closed forms, halves against counting by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from compose.check import StateSpace, explore
from compose.forecast.exact import exact_course
from compose.forecast.matches import best_of, halves_of, match_of
from tests.check.build import Builder
from tests.check.cases import bell
from tests.interpreter.sheets import game_in, library_game


@pytest.mark.parametrize(
    ("rounds", "chance", "win", "mean"),
    [
        (3, Fraction(3, 5), Fraction(81, 125), Fraction(62, 25)),
        (5, Fraction(3, 5), Fraction(2133, 3125), Fraction(2541, 625)),
        (7, Fraction(3, 5), Fraction(11097, 15625), Fraction(17804, 3125)),
        (7, Fraction(1, 2), Fraction(1, 2), Fraction(93, 16)),
        (1, Fraction(1, 3), Fraction(1, 3), Fraction(1)),
    ],
)
def test_best_of_an_odd_number(rounds: int, chance: Fraction, win: Fraction, mean: Fraction) -> None:
    """Computed from the sum over who wins the last round (problem of points, 1654)."""
    wins, drawn, played = best_of(rounds, (float(chance), 1 - float(chance)))
    assert wins == pytest.approx([float(win), 1 - float(win)], abs=1e-12)
    assert drawn == pytest.approx(0.0, abs=1e-12) and played == pytest.approx(float(mean), abs=1e-12)


@given(
    rounds=st.integers(1, 5),
    parts=st.lists(st.integers(0, 5), min_size=3, max_size=4).filter(lambda parts: sum(parts) > 0),
)
@settings(max_examples=40, deadline=None)
def test_best_of_as_by_writing_out_every_match(rounds: int, parts: list[int]) -> None:
    """The last part stands for drawn rounds; stopping early changes no winner."""
    chances = [part / sum(parts) for part in parts]
    wins, drawn = np.zeros(len(parts) - 1), 0.0
    for results in product(range(len(parts)), repeat=rounds):
        likely = float(np.prod([chances[result] for result in results]))
        won = [results.count(side) for side in range(len(parts) - 1)]
        if won.count(max(won)) == 1:
            wins[won.index(max(won))] += likely
        else:
            drawn += likely
    found, level, mean = best_of(rounds, chances[:-1])
    assert found == pytest.approx(wins, abs=1e-12) and level == pytest.approx(drawn, abs=1e-12)
    assert 0 < mean <= rounds + 1e-12 and found.sum() + level == pytest.approx(1.0)


def test_matches_are_read_from_the_game() -> None:
    game = library_game("quarry-row")
    play = Builder("slaters", "masons")
    play.place("slaters", 0, 1)
    told = play.rule("first to one")
    play.may("a point", play.shift("slaters", 1, told))
    play.end("slaters win", "slaters", play.at_least("slaters", 1), told)
    space = explore(play.net())
    assert isinstance(space, StateSpace)
    course = exact_course(space, (0.5,), 30.0)
    match = match_of(game, ("slaters", "masons"), (0.6, 0.4), course)
    assert match is not None and match.words == "best of 3 rounds"
    assert match.mean_rounds == pytest.approx(2.48) and match.minutes == pytest.approx(2.48 * 2)
    assert match_of(library_game("lantern-row"), ("north", "south"), (0.5, 0.5), course) is None


TWO_HALVES = """
    game Two Halves
      ages 8 to 12
      credit "Tarn Valley schools (invented)"
      licence CC-BY-4.0

    space
      court 18 m by 9 m, halved across

    sides
      runners and fielders, 4 players each

    kit
      2 foam balls
      2 posts for each side, like a club

    set-up
      posts on the back line of their side, evenly spaced
      1 foam ball in each half

    play
      players stay in their half
      players overarm throw a foam ball at the posts of the other side

    when
      a post is knocked: the thrower's side scores 1 point and it stands up again

    finish
      after 3 min: nobody wins
      two halves, the sides change tasks
"""


def test_halves_by_points() -> None:
    """Runners get 0, 1 or 2 points, fielders none: the lead over both halves is the difference of two halves."""
    game = game_in(TWO_HALVES)
    play = Builder("runners", "fielders")
    play.place("runners", 0, 2, side="runners")
    play.place("fielders", 0, 2, side="fielders")
    told = play.rule("points")
    play.may("a point", play.shift("runners", 1, told), guard=play.at_most("runners", 1))
    space = explore(play.net(bell(play, after_s=60.0), open_ended=True))
    assert isinstance(space, StateSpace)
    course = exact_course(space, (1.0,), 30.0)
    none, one = np.exp(-1.0), np.exp(-1.0)
    chances = np.array([none, one, 1 - none - one])
    assert course.points[0] == pytest.approx(chances, abs=1e-9)
    halves = halves_of(game, ("runners", "fielders"), course)
    assert halves is not None
    level = float((chances**2).sum())
    assert halves.level == pytest.approx(level, abs=1e-9)
    assert [chance for _, chance in halves.wins] == pytest.approx([(1 - level) / 2] * 2, abs=1e-9)
    assert dict(halves.points)["runners"] == pytest.approx(chances @ [0, 1, 2])
    assert halves.minutes == pytest.approx(2.0)
    faster = exact_course(space, (3.0,), 30.0)
    uneven = halves_of(game, ("runners", "fielders"), course, faster)
    assert uneven is not None and uneven.wins[1][1] > uneven.wins[0][1] > 0
    other = faster.points[0]
    ahead = sum(chances[mine] * other[theirs] for mine in range(3) for theirs in range(mine))
    assert uneven.wins[0][1] == pytest.approx(ahead, abs=1e-9)

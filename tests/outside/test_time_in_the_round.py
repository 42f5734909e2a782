"""Rates that change at given times: each piece by SciPy's `expm_multiply` on a generator written by hand.

Sources: A. H. Al-Mohy and N. J. Higham, "Computing the action of the matrix exponential, with an application to
exponential integrators", SIAM Journal on Scientific Computing 33(2), 2011, 488-511, which is what
`scipy.sparse.linalg.expm_multiply` does. That a chain whose rates change at fixed times is the product of the
exponentials of its pieces is the Chapman-Kolmogorov equation.
"""

from __future__ import annotations

from math import comb

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.sparse import csr_array
from scipy.sparse.linalg import expm_multiply

from compose.forecast.chain.exact import exact_course
from compose.forecast.rounds.simulate import Play, simulate
from tests.outside.whole_way import Played

ROW = """
game Late Balls
space
  court 10 m by 6 m, halved across
sides
  north, 3 players
  south, 1 player
kit
  {kit}, like a foam ball
  5 cones for south
set-up
  1 soft ball in the half of north
  cones on the back line of their side
play
  players stay in their half
  north players roll a soft ball at the cones of south, 1 in 4 succeed, 2 times a minute
  {play}
when
  a cone is knocked: it stays down and the roller's side scores 1 point
  {when}
finish
  north wins when south has no cones standing
  {finish}
"""


def generator(rates: list[float]) -> csr_array:
    """A pure birth chain: from k to k + 1 at rates[k], transposed for columns of chances."""
    size = len(rates) + 1
    matrix = np.zeros((size, size))
    for state, rate in enumerate(rates):
        matrix[state, state] -= rate
        matrix[state, state + 1] += rate
    return csr_array(matrix.T)


def on_pieces(pieces: list[tuple[float, float]], number: int) -> NDArray[np.float64]:
    """The chances of 0, 1, ... knocked after pieces of (minutes, rate)."""
    chances = np.zeros(number + 1)
    chances[0] = 1.0
    for minutes, rate in pieces:
        chances = expm_multiply(generator([rate] * number) * minutes, chances)
    return np.asarray(chances)


def played(
    kit: int, when: str, finish: str = "after 6 min: north wins", play: str = "a ball rests in the half it came from"
) -> Played:
    return Played(
        ROW.format(kit="1 soft ball" if kit == 1 else f"{kit} soft balls", when=when, finish=finish, play=play),
        {"north": 3, "south": 1},
    )


def test_a_second_and_a_third_ball_after_a_while() -> None:
    """One player acts with one ball, two with two: each at 2 a minute, of which 1 in 4 succeed."""
    game = played(5, "after 90 s: 2 soft balls come in\n  after 4 min: another 2 soft balls come in")
    course = exact_course(game.space, game.constants, 30.0)
    expected = on_pieces([(1.5, 0.5), (2.5, 1.0), (2.0, 1.5)], 5)
    assert course.by_end.sum() == pytest.approx(expected[-1], abs=1e-10)
    points = next(iter(course.points.values()))
    assert points[:6] == pytest.approx(expected, abs=1e-10)
    assert sum(chance.value for _, chance in course.length.over_by if _ == 6.0) == pytest.approx(expected[-1], abs=1e-9)


def test_without_a_clock_the_last_piece_is_played_out() -> None:
    """Five knocks at rate 1/2; the second ball comes to either half alike, so that the rest is at rate 1 or at 1/2."""
    game = played(2, "after 90 s: a soft ball comes in", finish="both at once: a draw")
    course = exact_course(game.space, game.constants, 30.0)
    first = on_pieces([(1.5, 0.5)], 5)
    stages = sum(chance * (5 - knocked) for knocked, chance in enumerate(first))
    held = sum(float(on_pieces([(minute, 0.5)], 5)[:5].sum()) for minute in np.linspace(0.0005, 1.4995, 1500)) * 0.001
    assert course.length.mean.value == pytest.approx(held + stages * (1 / 1.0 + 1 / 0.5) / 2, abs=1e-5)
    assert course.by_end.sum() == pytest.approx(1.0, abs=1e-10)


def test_an_attempt_that_may_be_made_later_only() -> None:
    text = ROW.format(
        kit="1 soft ball", when="", finish="after 6 min: north wins", play="a ball rests in the half it came from"
    ).replace("2 times a minute", "2 times a minute, only after 2 min")
    game = Played(text, {"north": 3, "south": 1})
    course = exact_course(game.space, game.constants, 30.0)
    assert course.by_end.sum() == pytest.approx(on_pieces([(2.0, 0.0), (4.0, 0.5)], 5)[-1], abs=1e-10)


def test_points_that_count_double_in_the_last_minutes() -> None:
    """So many knocked before and so many after are a Poisson process in two pieces, cut off at the fifth."""
    text = "a ball rests in the half it came from\n  in the last 2 min, points count double"
    game = played(1, "", "after 6 min: more points wins, else a draw", text)
    course = exact_course(game.space, game.constants, 30.0)
    points = next(iter(course.points.values()))
    expected = np.zeros(11)
    before = on_pieces([(4.0, 0.5)], 5)
    for early in range(6):
        after = on_pieces([(2.0, 0.5)], 5 - early) if early < 5 else np.ones(1)
        for late, chance in enumerate(after):
            expected[early + 2 * late] += before[early] * chance
    assert points[:11] == pytest.approx(expected, abs=1e-10)


RETURN = """
game Whistle Back
space
  court 10 m by 6 m, halved across
  rest queue: beside each half
sides
  north and south, 1 to 20 players each
kit
  {balls} soft balls, like a foam ball
set-up
  soft balls in the half of north
play
  players stay in their half
  north players roll a soft ball at the players of south, 1 in 2 succeed, 1 times a minute
  a ball rests in the half it came from
when
  a player is hit: that player waits in the rest queue
  every 2 min: all in each rest queue return
finish
  north wins when south has no players in
{bell}
"""


def death(number: int, rate: float) -> csr_array:
    """Down from k to k - 1 at a rate as long as any is left, none left being kept."""
    matrix = np.zeros((number + 1, number + 1))
    for state in range(1, number + 1):
        matrix[state, state] -= rate
        matrix[state, state - 1] += rate
    return csr_array(matrix.T)


@pytest.mark.parametrize("minutes", [5.0, 7.5])
def test_all_return_at_every_whistle(minutes: float) -> None:
    """Between whistles one south player after the other is hit; at each all who are left are as many as at first."""
    game = Played(RETURN.format(balls=2, bell=f"  after {minutes} min: south wins"), {"north": 4, "south": 3})
    course = exact_course(game.space, game.constants, 30.0)
    chances, over = np.array([0.0, 0.0, 0.0, 1.0]), 0.0
    now = 0.0
    while now < minutes:
        piece = min(2.0, minutes - now)
        chances = expm_multiply(death(3, 1.0) * piece, chances)
        now += piece
        over += chances[0]
        chances = np.array([0.0, 0.0, 0.0, chances[1:].sum()]) if now < minutes else chances
    assert course.by_end.sum() == pytest.approx(over, abs=1e-10)
    assert course.by_result[0] == pytest.approx(1 - over, abs=1e-10)


def test_whistles_without_a_clock_go_on_until_an_end() -> None:
    """Each whistle begins anew: a geometric number of whole pieces, then the piece in which the last is hit.

    In 2 minutes at rate 1 the third hit comes with the chance of at least 3 events of a Poisson law of mean 2.
    """
    game = Played(RETURN.format(balls=2, bell=""), {"north": 4, "south": 3})
    course = exact_course(game.space, game.constants, 30.0)
    none = np.exp(-2.0) * sum(2.0**k / np.prod(range(1, k + 1)) for k in range(3))
    # E[min(T, 2)] of an Erlang law of 3 stages: the integral of exp(-t) (1 + t + t^2 / 2) up to 2.
    held = 3 - 9 * np.exp(-2.0)
    assert course.by_end.sum() == pytest.approx(1.0, abs=1e-9)
    assert course.length.mean.value == pytest.approx(held / (1 - none), rel=1e-6)


def test_rounds_at_random_keep_to_the_moments_as_well() -> None:
    game = Played(RETURN.format(balls=2, bell="  after 5 min: south wins"), {"north": 4, "south": 3})
    exact = exact_course(game.space, game.constants, 30.0)
    found = simulate(game.net, game.constants, 30.0, Play(rounds=4000, seed=3))
    assert found is not None
    assert found.course.by_end.sum() == pytest.approx(exact.by_end.sum(), abs=0.03)
    assert found.course.tokens == pytest.approx(exact.tokens, rel=0.06, abs=0.05)
    assert found.course.firings == pytest.approx(exact.firings, rel=0.08, abs=0.05)


def test_a_loose_ball_goes_to_either_side_alike() -> None:
    """Three balls for two sides: one of them has two, each with the same chance."""
    text = RETURN.replace("every 2 min: all in each rest queue return", "after 2 min: 3 soft balls come in")
    game = Played(text.format(balls=4, bell="  after 4 min: south wins"), {"north": 4, "south": 3})
    south_half = next(n for n, place in enumerate(game.net.places) if place.name == "ball/soft ball/half/south")
    held = {int(count) for count in game.space.encoding.markings(game.space.codes)[:, south_half]}
    assert held == {0, 1, 2}
    expected = comb(2, 1) / 4
    ticks = [move for move in game.net.transitions if move.ticks]
    assert [move.part for move in ticks] == [expected, expected]

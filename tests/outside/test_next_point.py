"""The deciding point from a level score: two Poisson processes until the clock, then the first point of either.

Sources: J. G. Skellam, "The frequency distribution of the difference between two Poisson variates belonging to
different populations", Journal of the Royal Statistical Society 109, 1946, 296 (as `scipy.stats.skellam`; from memory);
of two independent Poisson processes the first event is of the one with the chance of its share of both rates (W.
Feller, An Introduction to Probability Theory and Its Applications, vol. 2, 2nd ed., Wiley 1971, ch. I; from memory).
"""

from __future__ import annotations

import pytest
from scipy.stats import skellam

from compose.forecast.chain.exact import exact_course
from compose.forecast.odds import odds
from compose.forecast.rounds.simulate import Play, simulate
from tests.outside.whole_way import Played

LEVEL = """
game Level
space
  court 10 m by 6 m, halved across
sides
  north and south, 1 player each
kit
  2 soft balls, like a foam ball
set-up
  1 soft ball in each half
play
  players stay in their half
  north players roll a soft ball past the back line of south, {north} in 10 succeed, 2 times a minute
  south players roll a soft ball past the back line of north, {south} in 10 succeed, 2 times a minute
  a ball rests in the half it came from
when
  a ball crosses the back line: the roller's side scores 1 point
finish
  after 4 min: more points wins, else the next point wins
"""


@pytest.mark.parametrize(("north", "south"), [(3, 3), (4, 1), (1, 2)])
def test_who_leads_wins_and_a_level_score_is_decided_by_the_next_point(north: int, south: int) -> None:
    game = Played(LEVEL.format(north=north, south=south), {"north": 1, "south": 1})
    course = exact_course(game.space, game.constants, 30.0)
    a, b = north / 5 * 4, south / 5 * 4
    level = skellam.pmf(0, a, b)
    wins = skellam.sf(0, a, b) + level * a / (a + b)
    assert odds(game.net, course).of("north") == pytest.approx(wins, abs=1e-8)
    assert course.by_end.sum() == pytest.approx(1.0, abs=1e-9)
    # Only a level score goes on, for as long as it takes until one of both scores.
    assert course.length.mean.value == pytest.approx(4 + level / ((north + south) / 5), abs=1e-7)


def test_rounds_at_random_go_on_as_well() -> None:
    game = Played(LEVEL.format(north=2, south=1), {"north": 1, "south": 1})
    found = simulate(game.net, game.constants, 30.0, Play(rounds=4000, seed=5))
    exact = exact_course(game.space, game.constants, 30.0)
    assert found is not None
    assert odds(game.net, found.course).of("north") == pytest.approx(odds(game.net, exact).of("north"), abs=0.03)
    assert found.course.length.mean.value == pytest.approx(exact.length.mean.value, abs=0.1)

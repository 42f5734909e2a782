"""The aiming model against closed forms, numerical integration, and its own laws."""

from __future__ import annotations

from math import exp, isclose, radians, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import erf
from scipy.stats import norm, rayleigh

from compose.forecast.chances.aim import (
    catches_outcome,
    goes_through_ring,
    hits_disc,
    hits_rectangle,
    hits_rolling,
    in_circle,
    spread_m,
    within,
)
from compose.forecast.chances.attempt import Aimed, reach_ring

SPREADS = st.floats(0.02, 3.0)
SIZES = st.floats(0.05, 3.0)
RADII = st.floats(0.0, 0.5)
CHANCES = st.floats(0.0, 1.0)
BY_HAND = [(0.3, 0.38, 0.09, 0.25, 0.4), (0.12, 0.381, 0.089, 0.5, 0.5), (1.6, 1.15, 0.11, 0.9, 0.3)]


def circle_by_integration(radius: float, across: float, up: float) -> float:
    """The chance of a circle by cutting it into upright strips."""

    def strip(x: float) -> float:
        half = sqrt(max(radius**2 - x**2, 0.0))
        return float(norm.pdf(x, scale=across) * (2 * norm.cdf(half, scale=up) - 1))

    return float(quad(strip, -radius, radius, epsabs=1e-12, limit=200)[0])


def test_spread_is_the_angle_times_the_distance() -> None:
    assert isclose(spread_m(3.0, 6.0, 1.0), 6.0 * radians(3.0))
    assert spread_m(3.0, 0.2, 1.0) == spread_m(3.0, 1.0, 1.0)


@pytest.mark.parametrize("half", [0.05, 0.2, 0.35, 1.0])
@pytest.mark.parametrize("spread", [0.1, 0.297, 0.8])
def test_one_axis_is_a_normal_interval(half: float, spread: float) -> None:
    assert isclose(within(half, spread), norm.cdf(half, scale=spread) - norm.cdf(-half, scale=spread))
    assert isclose(within(half, spread), erf(half / (spread * sqrt(2))))


def test_one_axis_at_its_ends() -> None:
    assert within(0.0, 0.3) == 0.0
    assert within(-0.1, 0.3) == 0.0
    assert within(0.1, 0.0) == 1.0


@pytest.mark.parametrize(("width", "height", "ball", "across", "up"), BY_HAND)
def test_a_rectangle_is_widened_by_the_ball(width: float, height: float, ball: float, across: float, up: float) -> None:
    sideways = erf((width / 2 + ball) / (across * sqrt(2)))
    upwards = erf((height / 2 + ball) / (up * sqrt(2)))
    assert isclose(hits_rectangle(width, height, ball, across, up), sideways * upwards)
    integral = quad(lambda x: norm.pdf(x, scale=across), -width / 2 - ball, width / 2 + ball)[0]
    assert isclose(hits_rectangle(width, height, ball, across, up), integral * upwards, rel_tol=1e-9)


def test_a_rolled_ball_has_no_error_upwards() -> None:
    assert hits_rolling(0.3, 0.09, 0.0, 0.25) == within(0.24, 0.25)
    assert hits_rolling(0.3, 0.09, 0.17, 0.25) == within(0.24, 0.25)
    assert hits_rolling(0.3, 0.09, 0.19, 0.25) == 0.0


@pytest.mark.parametrize("spread", [0.1, 0.297, 0.8])
@pytest.mark.parametrize("radius", [0.1, 0.35, 0.9])
def test_a_disc_with_equal_spreads_is_the_rayleigh_law(radius: float, spread: float) -> None:
    assert isclose(in_circle(radius, spread, spread), 1 - exp(-(radius**2) / (2 * spread**2)))
    assert isclose(in_circle(radius, spread, spread), rayleigh.cdf(radius, scale=spread))


@pytest.mark.parametrize("across", [0.1, 0.297, 0.5])
@pytest.mark.parametrize("up", [0.15, 0.296, 0.45])
def test_a_disc_with_unequal_spreads_agrees_with_integration(across: float, up: float) -> None:
    for radius in (0.1, 0.35, 0.9):
        assert isclose(in_circle(radius, across, up), circle_by_integration(radius, across, up), abs_tol=1e-9)


def test_a_disc_with_error_on_one_axis_only_is_an_interval() -> None:
    assert in_circle(0.35, 0.3, 0.0) == within(0.35, 0.3)
    assert in_circle(0.35, 0.0, 0.3) == within(0.35, 0.3)
    assert in_circle(0.0, 0.3, 0.3) == 0.0


def test_half_of_the_throws_hit_at_the_median_of_the_rayleigh_law() -> None:
    assert isclose(in_circle(0.35, 0.35 / 1.177410, 0.35 / 1.177410), 0.5, abs_tol=1e-6)


def test_a_ring_is_narrowed_by_the_ball() -> None:
    assert isclose(goes_through_ring(0.8, 0.1, 0.3, 0.3), in_circle(0.3, 0.3, 0.3))
    assert goes_through_ring(0.2, 0.1, 0.3, 0.3) == 0.0
    assert isclose(hits_disc(0.8, 0.1, 0.3, 0.3), in_circle(0.5, 0.3, 0.3))


def test_nothing_can_be_hit_that_has_no_size() -> None:
    assert hits_rectangle(0.0, 1.0, 0.1, 0.2, 0.2) == 0.0
    assert hits_rectangle(1.0, 0.0, 0.1, 0.2, 0.2) == 0.0
    assert hits_rolling(0.0, 0.1, 0.0, 0.2) == 0.0
    assert hits_disc(0.0, 0.1, 0.2, 0.2) == 0.0


@given(st.tuples(SIZES, SIZES), RADII, st.tuples(SPREADS, SPREADS), st.floats(1.01, 3.0))
@settings(max_examples=150, deadline=None)
def test_larger_targets_and_smaller_spreads_are_hit_more(
    size: tuple[float, float], ball: float, spreads: tuple[float, float], more: float
) -> None:
    (width, height), (across, up) = size, spreads
    chance = hits_rectangle(width, height, ball, across, up)
    assert 0.0 <= chance <= 1.0
    assert hits_rectangle(width * more, height, ball, across, up) >= chance
    assert hits_rectangle(width, height * more, ball, across, up) >= chance
    assert hits_rectangle(width, height, ball, across * more, up) <= chance
    assert hits_rectangle(width, height, ball, across, up * more) <= chance
    assert hits_rolling(width, ball, 0.0, across * more) <= hits_rolling(width, ball, 0.0, across)


@given(SIZES, SPREADS, SPREADS, st.floats(1.01, 3.0))
@settings(max_examples=150, deadline=None)
def test_a_circle_obeys_the_same_laws(radius: float, across: float, up: float, more: float) -> None:
    chance, slack = in_circle(radius, across, up), 1e-9
    assert 0.0 <= chance <= 1.0
    assert in_circle(radius * more, across, up) >= chance - slack
    assert in_circle(radius, across * more, up) <= chance + slack
    assert isclose(chance, in_circle(radius, up, across), abs_tol=slack)
    square_inside, square_around = radius * sqrt(2), 2 * radius
    assert hits_rectangle(square_inside, square_inside, 0.0, across, up) <= chance + slack
    assert hits_rectangle(square_around, square_around, 0.0, across, up) >= chance - slack


@given(CHANCES, CHANCES, CHANCES)
def test_of_the_balls_that_reach_a_player_all_are_accounted_for(reached: float, caught: float, dodged: float) -> None:
    hit, held = catches_outcome(reached, caught, dodged)
    evaded = reached * (1 - caught) * dodged
    assert isclose(hit + held + evaded, reached, abs_tol=1e-12)


@given(width=SIZES, height=SIZES, ball=RADII, across=SPREADS, up=SPREADS)
def test_a_frame_laid_on_its_side_is_as_easy_for_whoever_strays_the_other_way(
    width: float, height: float, ball: float, across: float, up: float
) -> None:
    standing = reach_ring(Aimed(width, height, ball_m=ball, across_m=across, up_m=up))
    lying = reach_ring(Aimed(height, width, ball_m=ball, across_m=up, up_m=across))
    alone = reach_ring(Aimed(width, 100.0, ball_m=ball, across_m=across, up_m=up))
    assert isclose(standing, lying, abs_tol=1e-12) and standing <= alone
    assert isclose(alone, reach_ring(Aimed(width, ball_m=ball, across_m=across, rolled=True)), abs_tol=1e-9)

"""Laws of the chances for any attempt: outcomes make up one attempt; nearer, larger, surer is never worse."""

from __future__ import annotations

import sys
from itertools import pairwise
from math import isclose

import attrs
from hypothesis import given, settings
from hypothesis import strategies as st

import library
from compose.forecast.chances.chances import chances
from compose.net.attempt import Attempt
from compose.staging.norms import LEVELS, Level
from library.records import BALL_SKILLS
from tests.forecast.one_attempt import ALL, net_of, told

SKILLS = st.sampled_from([*BALL_SKILLS, "run", "touch", "free", "carry", "cross", "hop"])
ATTEMPTS = st.builds(
    Attempt,
    name=st.just("an attempt"),
    skill=SKILLS,
    ball=st.sampled_from([None, "foam ball", "tennis ball", "light ball", "moon rock"]),
    aim=st.sampled_from(["target", "player", "ring", "line", "mate", "none"]),
    target=st.sampled_from([None, "cone", "hoop", "wall target", "tin on stand", "dragon"]),
    distance_m=st.floats(0.0, 25.0),
    width_m=st.just(0.0) | st.floats(0.05, 3.0),
    height_m=st.just(0.0) | st.floats(0.05, 3.0),
    share=st.floats(0.0, 1.0),
    said_chance=st.none() | st.floats(0.0, 0.5),
    said_per_minute=st.none() | st.floats(0.1, 30.0),
    said_catch=st.none() | st.floats(0.0, 0.5),
    catchable=st.booleans(),
    age_years=st.tuples(st.integers(5, 11), st.integers(0, 8)).map(lambda ages: (ages[0], ages[0] + ages[1])),
)


@given(
    ATTEMPTS,
    st.sampled_from(["low", "usual", "high"]),
    st.sampled_from([ALL, ALL[:1], (*ALL, "left"), ("success", "missed")]),
)
@settings(max_examples=250, deadline=None)
def test_outcomes_are_chances_and_make_up_one_attempt(
    attempt: Attempt, level: Level, outcomes: tuple[str, ...]
) -> None:
    result = told(attempt, outcomes, level)
    ways = (result.success, result.caught, result.left, result.missed)
    assert min(ways) >= 0
    assert isclose(sum(ways), 1, abs_tol=1e-12)
    assert result.per_minute > 0
    rates = chances(net_of(attempt, outcomes), library.norms(), library.kit_names(), level)
    assert rates.sum() <= result.per_minute * attempt.share * (1 + 1e-12) + sys.float_info.min
    if attempt.said_chance is not None:
        assert result.success == attempt.said_chance


@given(
    st.sampled_from(BALL_SKILLS),
    st.sampled_from(["target", "player", "ring", "mate"]),
    st.floats(1.0, 12.0),
    st.floats(1.0, 2.0),
    st.booleans(),
)
@settings(max_examples=150, deadline=None)
def test_nearer_and_larger_succeed_more(skill: str, aim: str, distance: float, more: float, catchable: bool) -> None:
    attempt = Attempt("try", skill, "foam ball", aim, None, distance, 0.6, 0.6, catchable=catchable)
    chance = told(attempt).success
    assert told(attrs.evolve(attempt, distance_m=distance * more)).success <= chance + 1e-12
    assert told(attrs.evolve(attempt, width_m=0.6 * more, height_m=0.6 * more)).success >= chance - 1e-12


@given(st.sampled_from(BALL_SKILLS), st.sampled_from(["target", "ring", "line"]))
def test_a_smaller_error_succeeds_more(skill: str, aim: str) -> None:
    attempt = Attempt("try", skill, "foam ball", aim, None, 6.0, 0.6, 0.6)
    net, norms, kit = net_of(attempt, ("success",)), library.norms(), library.kit_names()
    by_error = [chances(net, norms, kit, instead={"aim across": level})[0] for level in LEVELS]
    assert all(smaller > larger for smaller, larger in pairwise(by_error))

"""A class's own rounds correct the forecast as the conjugate laws say."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from compose.forecast.answers import Answers
from compose.forecast.course import Figure
from compose.forecast.observed import SeenRound, corrected

USUAL = Answers(Figure(4.0), (("north", Figure(0.6)), ("south", Figure(0.3))), Figure(0.1), Figure(2.0), Figure(0.0))
rounds = st.builds(SeenRound, st.floats(0.5, 8.0), st.sampled_from(("north", "south", "")))


def test_without_rounds_nothing_is_corrected() -> None:
    assert corrected(USUAL, (), 8.0, 4) == ()


def test_mean_length_by_hand() -> None:
    length = corrected(USUAL, (SeenRound(2.0, "north"), SeenRound(3.0, "north")), None, 4)[0]
    assert length.after == pytest.approx((4 * 4.0 + 5.0) / 6)


def test_odds_by_hand_are_those_of_a_beta_law() -> None:
    """Weight 4 and 0.6 is Beta(2.4, 1.6); two wins of three make it Beta(4.4, 2.6)."""
    seen = (SeenRound(3.0, "north"), SeenRound(3.0, "north"), SeenRound(3.0, "south"))
    odds = corrected(USUAL, seen, None, 4)[1]
    assert odds.name == "win odds of north"
    assert odds.after == pytest.approx(4.4 / 7)


def test_interval_holds_nine_tenths_of_the_gamma_law() -> None:
    length = corrected(USUAL, [SeenRound(5.0, "")] * 6, None, 4)[0]
    drawn = (4 * 4.0 + 30.0) / np.random.default_rng(7).gamma(10, size=200_000)
    inside = np.mean((drawn >= length.low) & (drawn <= length.high))
    assert inside == pytest.approx(0.9, abs=0.005)


@given(st.lists(rounds, min_size=1, max_size=30), st.floats(0.5, 20))
def test_after_lies_between_forecast_and_what_was_seen(seen: list[SeenRound], weight: float) -> None:
    length = corrected(USUAL, seen, 8.0, weight)[0]
    mean = sum(each.minutes for each in seen) / len(seen)
    assert min(4.0, mean) - 1e-9 <= length.after <= max(4.0, mean) + 1e-9
    assert length.low <= length.after <= length.high


@given(st.lists(rounds, min_size=1, max_size=30))
def test_rounds_at_the_clock_are_counted(seen: list[SeenRound]) -> None:
    stopped = corrected(USUAL, [*seen, SeenRound(8.0, "")], 8.0, 4)[-1]
    assert stopped.after > (4 * 0.1) / (4 + len(seen) + 1)

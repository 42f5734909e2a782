"""Shares of a whole in percent add up to it, and equal ones stay equal where another can take the point."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from compose.forecast.telling.wording import parts


@pytest.mark.parametrize(
    ("shares", "told"),
    [
        ((0.494, 0.494, 0.012), ("49 %", "49 %", "2 %")),
        ((1 / 3, 1 / 3, 1 / 3), ("34 %", "33 %", "33 %")),
        ((0.5, 0.5), ("50 %", "50 %")),
        ((0.9965, 0.0035), ("over 99 %", "under 1 %")),
        ((0.825, 0.175), ("83 %", "17 %")),
    ],
)
def test_shares_in_words(shares: tuple[float, ...], told: tuple[str, ...]) -> None:
    assert parts(shares) == told


@given(st.lists(st.integers(min_value=1, max_value=1000), min_size=2, max_size=6))
def test_whole_percents_add_up(weights: list[int]) -> None:
    told = parts([weight / sum(weights) for weight in weights])
    if all(each[0].isdigit() for each in told):
        assert sum(int(each.split()[0]) for each in told) == 100
    for weight, each in zip(weights, told, strict=True):
        if each[0].isdigit():
            assert abs(int(each.split()[0]) - 100 * weight / sum(weights)) < 1 + 1e-9


def test_shares_of_a_part_add_up_to_it() -> None:
    assert sum(int(each.split()[0]) for each in parts((0.3549, 0.02, 0.08, 0.0451), 50)) == 50

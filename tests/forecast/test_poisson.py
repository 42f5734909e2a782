"""The Poisson law against an independent one, for few and for very many events."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from compose.forecast.chain.poisson import last_above, poisson


@pytest.mark.parametrize("mean", [0.0, 0.3, 1.0, 7.5, 300.0, 12_345.6, 400_000.0])
def test_as_scipy_has_it(mean: float) -> None:
    last = int(mean + 6 * mean**0.5) + 5
    exactly, more = poisson(mean, last)
    ticks = np.arange(last + 1)
    assert np.allclose(exactly, stats.poisson.pmf(ticks, mean), rtol=1e-8, atol=1e-300)
    assert np.allclose(more, stats.poisson.sf(ticks, mean), rtol=1e-8, atol=1e-18)
    assert exactly.sum() + more[-1] == pytest.approx(1.0, abs=1e-13)


@pytest.mark.parametrize("mean", [0.0, 2.0, 500.0, 100_000.0])
def test_last_is_the_first_that_is_passed_seldom_enough(mean: float) -> None:
    last = last_above(mean, 1e-11)
    assert stats.poisson.sf(last, mean) <= 1e-11 * 1.001
    assert last == 0 or stats.poisson.sf(last - 1, mean) > 1e-11 * 0.999

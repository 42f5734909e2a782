"""Time limits: where play is at the bell, against closed forms."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import stats
from scipy.integrate import simpson

from compose.forecast.chain.absorb import absorb
from compose.forecast.chain.bell import at_bell, until
from compose.forecast.chain.durations import lengths
from tests.check.chance_games import duel, most_points, race, targets, walk

EXACT = 1e-9


@pytest.mark.parametrize(("count", "rate", "minutes"), [(6, 0.5, 5.0), (10, 1.0, 2.0), (3, 2.0, 0.1)])
def test_all_down_by_the_bell(count: int, rate: float, minutes: float) -> None:
    """Independent exponential times: (1 - e^(-rate t))^n."""
    fallen = 1 - math.exp(-rate * minutes)
    chain = targets(count, rate, chosen_at_random=False).chain()
    result = until(chain, minutes)
    assert result.by_end[0] == pytest.approx(fallen**count, abs=EXACT)
    assert result.running == pytest.approx(1 - fallen**count, abs=EXACT)
    standing = chain.spread(result.at_bell) @ chain.space.encoding.markings(chain.space.codes[chain.running])[:, 0]
    assert standing == pytest.approx(count * (1 - fallen), abs=EXACT)
    # Each target stands for min(its time, minutes) on average, whether or not others stand.
    assert result.tokens[0] == pytest.approx(count * fallen / rate, rel=EXACT)
    assert result.firings[0] == pytest.approx(count * fallen, rel=EXACT)


def test_race_with_a_clock() -> None:
    """Two Erlang times: to 5 points at 1 and at 0.8 a minute, over within 6 minutes."""
    five, other = stats.gamma(5), stats.gamma(5, scale=1 / 0.8)
    result = until(race(5, 1.0, 0.8).chain(), 6.0)
    assert 1 - result.running == pytest.approx(1 - five.sf(6) * other.sf(6), abs=EXACT)
    times = np.linspace(0, 6, 20_001)
    won = simpson(five.pdf(times) * other.sf(times), x=times)
    assert result.by_end[0] == pytest.approx(won, abs=EXACT)
    mean = simpson(five.sf(times) * other.sf(times), x=times)
    assert result.mean == pytest.approx(mean, abs=EXACT)


@pytest.mark.parametrize(("north", "south"), [(5.0, 4.0), (6.0, 5.0), (3.0, 3.0), (10.0, 8.0)])
def test_most_points_at_the_bell(north: float, south: float) -> None:
    """Difference of two Poisson numbers (J. G. Skellam, J. Royal Stat. Soc. 109, 1946, 296)."""
    skellam = stats.skellam(north, south)
    result = at_bell(most_points(north / 4, south / 4, most=60, minutes=4.0).chain())
    assert result is not None
    expected = [skellam.sf(0), skellam.cdf(-1), skellam.pmf(0)]
    assert result.by_result == pytest.approx(expected, abs=EXACT)
    assert result.unsaid == 0 and result.mean == pytest.approx(4.0, rel=EXACT)
    assert result.firings == pytest.approx([north, south], rel=1e-8)


@pytest.mark.parametrize(("minutes", "over"), [(0.5, 0.131314971305), (1.0, 0.546107935379), (2.0, 0.929929260430)])
def test_shoot_out_over_by(minutes: float, over: float) -> None:
    """5 against 5; values by matrix exponential of the same process written out by hand."""
    chain = duel(5, 5).chain()
    assert 1 - until(chain, minutes).running == pytest.approx(over, abs=1e-9)
    assert lengths(chain, [minutes]).over_by[0] == pytest.approx(over, abs=1e-9)


def test_long_bell_comes_to_the_round_without_one() -> None:
    chain = duel(4, 3).chain()
    free, limited = absorb(chain), until(chain, 500.0)
    assert limited.by_end == pytest.approx(free.by_end, abs=EXACT)
    assert limited.mean == pytest.approx(free.mean, rel=EXACT)
    assert limited.tokens == pytest.approx(free.tokens, rel=EXACT)
    assert limited.running < 1e-12
    assert limited.walk.ticks < 1000, "play that is over is not watched on"


def test_median_and_ninety_percent() -> None:
    """The last of n exponential times: -ln(1 - level^(1/n)) / rate."""
    found = lengths(targets(6, 0.5, chosen_at_random=False).chain(), levels=(0.5, 0.9, 0.99))
    assert found.within == pytest.approx(
        [-math.log(1 - level ** (1 / 6)) / 0.5 for level in (0.5, 0.9, 0.99)], rel=1e-8
    )
    assert found.settled


def test_tail_of_a_long_walk_is_continued(monkeypatch: pytest.MonkeyPatch) -> None:
    """A fair walk from the middle of 0..20: the tail decays like the slowest mode, cos(pi/20) a step."""
    chain = walk(10, 20, 0.5, 0.5).chain()
    whole = lengths(chain, [700.0], levels=(0.5, 0.99))
    monkeypatch.setattr("compose.forecast.chain.durations.MOST_PRODUCTS", 1)
    short = lengths(chain, [700.0], levels=(0.5, 0.99, 1 - 1e-9))
    assert short.settled
    assert short.within[:2] == pytest.approx(whole.within, rel=1e-6)
    assert short.over_by == pytest.approx(whole.over_by, rel=1e-9)
    # From the middle the amplitude of that mode is cot(pi/40)/10, summed over the odd modes' expansion.
    decay = 1 - math.cos(math.pi / 20)
    amplitude = 1 / (10 * math.tan(math.pi / 40))
    assert short.within[2] == pytest.approx(math.log(amplitude / 1e-9) / decay, rel=1e-6)

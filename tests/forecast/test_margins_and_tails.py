"""Numbers beside the numbers: margins that are solutions of what they say, and tails that end where play ends."""

from __future__ import annotations

import math

import attrs
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from compose.forecast.chain.bell import until
from compose.forecast.chain.durations import lengths, lengths_in_pieces
from compose.forecast.chain.walk import Walk
from compose.forecast.course import SURE, Figure, chance_margin, score_of
from compose.forecast.matches import game_odds
from compose.forecast.rounds.simulate import _quantile
from compose.forecast.rounds.ticks import Ticking
from compose.forecast.standings import PLAYING, WAITING, Standing, with_rest
from compose.net.match import Match
from compose.net.schedule import Schedule
from grammar.core.ends import Meeting
from tests.check.build import Builder
from tests.check.cases import bell
from tests.check.chance_games import race
from tests.forecast.one_attempt import THROW, told
from tests.forecast.test_matches import course_of, one_point

MEETING = Match(groups=3, courts=1, meeting=Meeting.WINNER_STAYS, rounds=6)


@given(st.floats(0.0, 1.0), st.integers(1, 10_000))
def test_the_further_end_of_a_margin_is_where_what_was_seen_is_just_likely_enough(share: float, rounds: int) -> None:
    """It solves (share - p)² = z² p (1 - p) / n."""
    margin = chance_margin(share, rounds)
    off = [(margin**2 - SURE**2 * p * (1 - p) / rounds) for p in (share - margin, share + margin)]
    assert min(map(abs, off)) == pytest.approx(0.0, abs=1e-9)


@given(st.lists(st.floats(0, 100), min_size=1, max_size=9))
def test_the_highest_quantile_is_the_largest_and_the_lowest_the_smallest(values: list[float]) -> None:
    seen = np.array(values)
    assert _quantile(seen, 1.0) == Figure(max(values)) and _quantile(seen, 0.0) == Figure(min(values))


def test_moments_of_the_clock_are_due_when_the_clock_says() -> None:
    schedule = Schedule(0, (60.0, 100.0), 45.0)
    ticking = Ticking(attrs.evolve(race(3, 1.0, 1.0).net, schedule=schedule), 1)
    for number, time_s in enumerate((60.0, 100.0, 135.0, 180.0, 225.0)):
        assert schedule.time_s(number) == pytest.approx(time_s)
        assert 60 * ticking.due(np.array([0])) == pytest.approx([time_s])
        ticking.passed += 1


def test_who_rests_part_of_the_time_does_all_else_the_less_and_is_as_sure_of_it() -> None:
    before = (Standing(PLAYING, Figure(0.75, 0.03), ()), Standing(WAITING, Figure(0.25, 0.03), ()))
    after = with_rest(MEETING, before)
    assert sum(each.share.value for each in after) == pytest.approx(1.0)
    for one, other in zip(before, after, strict=False):
        part = other.share.value / one.share.value
        assert part < 1 and other.share.margin == pytest.approx(one.share.margin * part)


def test_of_groups_that_meet_somebody_is_ahead_or_it_is_level() -> None:
    found = game_odds(one_point(MEETING), course_of(one_point(MEETING)))
    assert sum(chance.value for _, chance in found.wins) + found.drawn.value == pytest.approx(1.0)


def test_in_pieces_play_lasts_as_long_as_in_one() -> None:
    """The second begins as the first ends; what has a last minute is over after it."""
    chain = race(3, 1.0, 1.0).chain()
    whole = lengths(chain, (1.0, 5.0), (0.1, 0.5, 0.9))
    begun = until(chain, 2.0).at_bell
    pieces = [(0.0, 2.0, Walk(chain)), (2.0, math.inf, Walk(chain, begun))]
    found = lengths_in_pieces(pieces, whole.times, whole.levels)
    assert found.over_by == pytest.approx(whole.over_by, abs=1e-6)
    assert found.within == pytest.approx(whole.within, abs=1e-3)
    stopped = lengths_in_pieces([(0.0, 2.0, Walk(chain))], (1.0, 3.0), (0.5,))
    assert stopped.over_by == pytest.approx([whole.over_by[0], 1.0])


def test_a_lead_is_counted_from_the_farthest_of_the_one_side_to_that_of_the_other() -> None:
    """Also where nobody is ever so far ahead."""
    play = Builder("runners", "fielders")
    for side in ("runners", "fielders"):
        play.place(side, 0, 5, side=side)
    play.may("a point", play.shift("runners", 1, play.rule("points")))
    net = play.net(bell(play), match=Match(halves=True, tasks_change=True))
    lead = score_of(net, np.array([net.start()], dtype=np.int32), np.ones(1)).lead
    assert lead is not None and len(lead) == 11 and lead[5] == lead.sum() == 1.0


@pytest.mark.parametrize("blockers", [1, 2])
def test_what_is_blocked_would_have_succeeded(blockers: int) -> None:
    found = told(attrs.evolve(THROW, blockers=blockers, block_with="body"), ("success", "blocked", "missed"))
    assert found.success + found.blocked == pytest.approx(told(THROW, ("success", "missed")).success)

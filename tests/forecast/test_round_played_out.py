"""A round played out says why it is over, and counts what happened in it."""

from __future__ import annotations

import numpy as np
import pytest

from compose.forecast.rounds.rounds import Rounds
from compose.forecast.rounds.sample import sample_round
from tests.check.build import Builder
from tests.check.chance_games import most_points, out_and_back


@pytest.mark.parametrize(
    ("rate", "clock_minutes", "why"), [(1.0, None, "stuck"), (1.0, 0.1, "rang"), (0.0, 5.0, "rang")]
)
def test_a_round_played_out_says_why_it_is_over(rate: float, clock_minutes: float | None, why: str) -> None:
    play = Builder()
    play.place("in", 3, 3, "player")
    play.place("gone", 0, 3, "player")
    play.may("leave", play.move("in", "gone", play.rule("who leaves stays away")), rate=play.rate("in"))
    clock = most_points(1, 1, 1, clock_minutes).net.bell if clock_minutes is not None else None
    net = play.net(clock, open_ended=True)
    sample = sample_round(net, (rate,), seed=1)
    assert {name for name in ("rang", "stuck", "unfinished") if getattr(sample, name)} == {why}
    assert (sample.end is None) == (why == "stuck")


def test_each_event_of_each_round_is_counted_once() -> None:
    game = out_and_back(3, 1.0, 0.7)
    rounds = Rounds(game.net, game.constants, 50, np.random.default_rng(2), every_event=True)
    seen = 0
    while rounds.running:
        seen += int((rounds.step() >= 0).sum())
    assert rounds.events == seen

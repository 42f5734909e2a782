"""A wait that a line gives a time lasts that time: no number and no line of play says more."""

from __future__ import annotations

import re

import numpy as np
import pytest

import library
from compose.forecast.chances.chances import chances
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.rounds.fixed_waits import fixed_minutes, place_left
from compose.forecast.rounds.sample import sample_round
from compose.forecast.rounds.simulate import Play
from compose.net.net import Move, Net
from tests.forecast.test_space_rounds import whole
from tests.interpreter.sheets import game_in, net_in

NAMES = ("burr-toss", "peat-cutters", "heather-raid", "harvest-kettles", "beacon-wardens")
FIXED = re.compile(r"comes back after \d+ s")


def game_with(name: str, seconds: int) -> Net:
    """A game of the library, with so long a wait."""
    text = next(path for path in library.game_paths() if path.stem == name).read_text()
    assert FIXED.search(text)
    return net_in(game_in(FIXED.sub(f"comes back after {seconds} s", text)))


def told_of(net: Net, rounds: int = 60) -> Forecast:
    found = forecast(net, library.norms(), library.kit_names(), play=Play(rounds=rounds), compare=False)
    assert found is not None
    return found


@pytest.mark.sample(4)
@pytest.mark.parametrize("seconds", [15, 150])
@pytest.mark.parametrize("name", NAMES)
def test_no_wait_is_told_longer_than_its_time(name: str, seconds: int) -> None:
    net = game_with(name, seconds)
    assert list(fixed_minutes(net).values()) == pytest.approx([seconds / 60] * len(fixed_minutes(net)))
    told = told_of(net)
    waited = [each for each in told.waits if each.place in fixed_minutes(net) and each.in_a_round > 0]
    assert waited
    for each in waited:
        assert each.mean.value <= each.ninety.value <= each.longest == pytest.approx(seconds / 60)
    long = [each for each in forecast_findings(told, library.norms()) if each.code == "F-long-wait"]
    assert all("more than 2.5 min" not in each.title for each in long)


TASK = """
game Reed Path
  ages 8 to 12
space
  court 20 m by 12 m, in one piece
  reed bench: along a side line
sides
  toads, 3 players
  frogs, 6 players
play
  toads touch players of the other side
  whoever waits on the reed bench comes back after {seconds} s
when
  a frog is touched: that player waits on the reed bench
finish
  after 20 min: nobody wins
"""


@pytest.mark.parametrize("seconds", [20, 90])
def test_a_wait_that_nothing_else_ends_lasts_its_time(seconds: int) -> None:
    """Worked out or played, nine in ten wait that long; on average a little less, for the clock cuts some off."""
    net = net_in(game_in(TASK.format(seconds=seconds).lstrip()))
    for source in (net, whole(net)):
        told = forecast(source, library.norms(), library.kit_names(), play=Play(rounds=200), compare=False)
        assert told is not None and told.simulated == (source is net)
        [wait] = told.waits
        assert wait.ninety.value == pytest.approx(seconds / 60)
        assert seconds / 60 * 0.9 < wait.mean.value < seconds / 60
        long = [each for each in forecast_findings(told, library.norms()) if each.code == "F-long-wait"]
        assert [each.title.split(",")[0] for each in long] == (
            [] if seconds == 20 else ["Of the waits on the reed bench more than one in ten lasts 1.5 min"]
        )


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_in_a_round_played_out_everybody_comes_back_when_it_is_time(seed: int) -> None:
    net = net_in(game_in(TASK.format(seconds=25).lstrip()))
    sample = sample_round(net, chances(net, library.norms(), library.kit_names()), seed)
    [bench] = fixed_minutes(net)
    sent, waits = [], []
    for event in sample.events:
        move = net.transitions[event.transition]
        if place_left(move) == bench:
            waits.append(event.minutes - sent.pop(0))
        elif any(isinstance(effect, Move) and effect.target == bench for effect in move.effects):
            sent.append(event.minutes)
    assert len(waits) > 5 and waits == pytest.approx(np.full(len(waits), 25 / 60))
    assert all(sample.minutes - since <= 25 / 60 for since in sent)

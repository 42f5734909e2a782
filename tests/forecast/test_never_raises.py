"""A forecast of anything: dead ends, endless parts, one situation, no moves, ends at the start; never an error."""

from __future__ import annotations

import json
import math

import attrs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import library
from compose.check import StateSpace, explore
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.rounds.simulate import Play
from compose.forecast.telling.telling import told
from compose.forecast.telling.to_json import forecast_json
from compose.net.net import Bell, End, Net
from compose.staging.minutes import lesson_of
from tests.check.build import ALWAYS, Builder, rule
from tests.check.random_nets import nets
from tests.check.worded import worded

NORMS, KIT = library.norms(), library.kit_names()
PLAY = Play(rounds=30, batch=30, events=3_000_000)
SHORT = attrs.evolve(PLAY, events=200_000)  # most of what happens for ever does so in as many
TOLD = rule("the bell")
BELLS = st.sampled_from(
    (
        None,
        None,
        Bell(90.0, (), TOLD),
        Bell(90.0, (End(worded("a draw"), None, ALWAYS, TOLD),), TOLD),
        Bell(1.0, (End(worded("north"), "north", ALWAYS, TOLD),), TOLD),
    )
)


def looked_at(net: Net, played: bool, lesson_minutes: float | None, play: Play = PLAY) -> Forecast | None:
    """The forecast, told in every way that there is; None where too much happens in a round to play even one."""
    space = explore(net)
    assert isinstance(space, StateSpace)
    found = forecast(
        net if played else space, NORMS, KIT, lesson=lesson_of(NORMS, (8.0, 12.0), lesson_minutes), play=play
    )
    if found is None:
        assert played
        return None
    forecast_findings(found, NORMS)
    words = " ".join(line for section in told(found) for line in section.lines)
    assert "nan" not in words.split()
    json.dumps(forecast_json(found), allow_nan=False)
    return found


@given(net=nets(), bell=BELLS, played=st.booleans(), lesson_minutes=st.sampled_from((None, 5.0, 45.0)))
@settings(max_examples=40, deadline=None)
def test_no_net_is_too_odd(net: Net, bell: Bell | None, played: bool, lesson_minutes: float | None) -> None:
    found = looked_at(attrs.evolve(net, bell=bell), played, lesson_minutes, SHORT)
    if found is None:
        return
    odds = found.odds
    whole = [chance.value for _, chance in odds.wins]
    assert sum(whole) + sum(each.value for each in (odds.draw, odds.nobody, odds.unsaid, odds.never)) == pytest.approx(
        1
    )
    mean = found.course.length.mean.value
    assert math.isfinite(mean) and mean >= 0


def odd_nets() -> dict[str, Net]:
    """The games that small random ones come to seldom."""
    made: dict[str, Net] = {}
    for name in ("no moves", "no moves, over at the start", "one way into a dead end", "out and back for ever"):
        play = Builder("north", "south")
        play.place("player/north/-/in", 2, 2, "player", "north")
        play.place("player/north/-/queue", 0, 2, "player", "north")
        told_ = play.rule("out")
        out = play.move("player/north/-/in", "player/north/-/queue", told_)
        back = play.move("player/north/-/queue", "player/north/-/in", told_)
        if name.startswith("one way") or name.startswith("out"):
            play.may("out", out, side="north", rate=play.rate("player/north/-/in"))
        if name.startswith("out"):
            play.may("back", back, rate=play.rate("player/north/-/queue"))
        if name.endswith("start"):
            play.end("over", "north", play.at_least("player/north/-/in", 1), told_)
        made[name] = play.net()
    return made


@pytest.mark.parametrize("name", odd_nets())
@pytest.mark.parametrize("rings", [False, True])
@pytest.mark.parametrize("played", [False, True])
def test_odd_games(name: str, rings: bool, played: bool) -> None:
    net = attrs.evolve(odd_nets()[name], bell=Bell(120.0, (), TOLD) if rings else None)
    found = looked_at(net, played, None)
    assert found is not None and (found.course.length.mean.value > 0 or "start" in name)

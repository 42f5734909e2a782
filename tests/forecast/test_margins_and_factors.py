"""What a sheet says of all attempts reaches the chances; where pupils spend the round is as sure as its margin says."""

from __future__ import annotations

import attrs
import numpy as np
import pytest

from compose.check import StateSpace, explore
from compose.forecast.chain.exact import exact_course
from compose.forecast.rounds.simulate import Play, simulate
from compose.forecast.standings import BENCH, PLAYING, WAITING, standings
from compose.net.attempt import Attempt
from compose.net.net import Net
from tests.check.build import Builder
from tests.check.cases import bell
from tests.forecast.one_attempt import THROW, told

LESSON, ROUNDS, SEEDS = 30.0, 100, 60
CONSTANTS = (1.0, 0.6, 0.8, 0.5)
ATTEMPTS = (
    THROW,
    attrs.evolve(THROW, catchable=True),
    attrs.evolve(THROW, aim="player", target=None, catchable=True),
    attrs.evolve(THROW, said_chance=0.4),
    attrs.evolve(THROW, said_chance=0.3, said_catch=0.2, catchable=True),
    Attempt("pass on", "pass", "volleyball", "mate", distance_m=4.0),
    Attempt("roll past", "roll", "foam ball", "line", distance_m=6.0),
)


@pytest.mark.parametrize("attempt", ATTEMPTS, ids=lambda attempt: f"{attempt.name} at {attempt.aim}")
@pytest.mark.parametrize("factor", [0.0, 0.25, 0.7])
def test_all_attempts_succeed_as_much_less_often_as_the_sheet_says(attempt: Attempt, factor: float) -> None:
    """What no longer succeeds is missed: no more is caught."""
    outcomes = ("success", "caught", "missed") if attempt.catchable else ("success", "missed")
    plain, rarer = told(attempt, outcomes), told(attrs.evolve(attempt, chance_factor=factor), outcomes)
    assert plain.success > 0
    assert rarer.success == pytest.approx(factor * plain.success, rel=1e-12)
    assert rarer.caught == pytest.approx(plain.caught, rel=1e-12)
    assert rarer.missed == pytest.approx(plain.missed + (1 - factor) * plain.success, rel=1e-12)


@pytest.mark.parametrize("attempt", ATTEMPTS, ids=lambda attempt: f"{attempt.name} at {attempt.aim}")
@pytest.mark.parametrize("factor", [0.5, 2.0])
def test_all_attempts_take_as_much_longer_as_the_sheet_says(attempt: Attempt, factor: float) -> None:
    slower = told(attrs.evolve(attempt, pace_factor=factor))
    assert slower.per_minute == pytest.approx(told(attempt).per_minute / factor, rel=1e-12)
    assert slower.success == told(attempt).success


def in_and_away() -> Net:
    """Four players of north go to the bench and to the queue and come back, until the clock stops play."""
    play = Builder("north")
    for name, start in (("in", 4), ("bench", 0), ("queue", 0)):
        play.place(name, start, 4, "player", "north")
    goes = play.rule("to and fro")
    for name in ("bench", "queue"):
        play.may(f"to the {name}", play.move("in", name, goes), side="north", rate=play.rate("in"))
        play.may(f"from the {name}", play.move(name, "in", goes), rate=play.rate(name))
    play.end("never", None, play.at_least("in", 5), goes)
    return play.net(bell(play, after_s=300.0), open_ended=True)


def test_where_pupils_spend_the_round_is_as_sure_as_its_margin_says() -> None:
    """Of many forecasts by rounds played at random about 95 in 100 hold the exact share within their margin."""
    net = in_and_away()
    space = explore(net)
    assert isinstance(space, StateSpace)
    exact = {each.name: each.share for each in standings(net, exact_course(space, CONSTANTS, LESSON))}
    assert set(exact) == {PLAYING, BENCH, WAITING} and all(figure.margin == 0 for figure in exact.values())
    errors, margins = [], []
    for seed in range(SEEDS):
        seen = simulate(net, CONSTANTS, LESSON, Play(rounds=ROUNDS, seed=seed))
        assert seen is not None
        shares = [each.share for each in standings(net, seen.course)]
        errors.append([abs(share.value - true.value) for share, true in zip(shares, exact.values(), strict=True)])
        margins.append([share.margin for share in shares])
    for held in (np.array(errors) <= np.array(margins)).mean(axis=0):
        assert 0.85 <= held <= 1.0
    wide = np.mean(errors, axis=0) / np.mean(margins, axis=0)
    assert (wide > 0.3).all() and (wide < 0.55).all(), "a normal law has 0.41"

"""The whole forecast: numbers that must add up, move the right way, and hold still under mirror images."""

from __future__ import annotations

from functools import cache

import attrs
import pytest

import library
from compose.check import Budget, StateSpace, explore
from compose.forecast import work
from compose.forecast.assumptions import ages_of
from compose.forecast.chain.exact import exact_course, solving_products
from compose.forecast.chances.chances import chances
from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.rounds.simulate import Play
from compose.forecast.sensitivity import Swing
from compose.forecast.standings import WAITING, pupils_of, standing_of
from compose.forecast.telling.results import winners
from compose.forecast.telling.telling import told, told_in_detail, told_then
from compose.net.net import Net
from tests.interpreter.remixes import remixed
from tests.interpreter.sheets import library_game, net_in

NORMS, KIT = library.norms(), library.kit_names()
QUICK = Play(rounds=200, batch=200)


def net_of_library(name: str) -> Net:
    return net_in(library_game(name))


def space_of(net: Net) -> StateSpace:
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    return space


@cache
def told_of(name: str) -> Forecast:
    game = library_game(name)
    found = forecast(space_of(net_in(game)), NORMS, KIT, play=QUICK, compare=False)
    assert found is not None
    return found


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
def test_everything_adds_up(name: str) -> None:
    found = told_of(name)
    odds, course, net = found.odds, found.course, found.net
    whole = [chance.value for _, chance in odds.wins]
    whole += [odds.draw.value, odds.nobody.value, odds.unsaid.value, odds.never.value]
    assert sum(whole) == pytest.approx(1.0, abs=1e-8)
    assert sum(way.chance.value for way in odds.ways) + odds.unsaid.value + odds.never.value == pytest.approx(
        1.0, abs=1e-8
    )
    assert sum(each.share.value for each in found.standings) == pytest.approx(1.0, abs=1e-9)
    for side in net.sides:
        assert sum(dict(each.by_side)[side] for each in found.standings) == pytest.approx(1.0, abs=1e-9)
    minutes = course.length.mean.value
    players = sum(float(course.tokens[place]) for place in standing_of(net))
    assert players == pytest.approx(pupils_of(net) * minutes, rel=1e-8)
    made = sum(figure.value * pupils_of(net, side) for side, figure in found.turns.by_side)
    assert made == pytest.approx(found.turns.each.value * pupils_of(net), rel=1e-9)
    assert 0 <= found.active.low <= found.active.usual <= found.active.high <= 1
    assert course.length.median.value <= course.length.ninety.value
    for distribution in course.points.values():
        assert distribution.sum() == pytest.approx(1.0, abs=1e-8)
    if course.score.lead is not None:
        assert course.score.lead.sum() == pytest.approx(1.0, abs=1e-8)
        assert len(course.score.lead) % 2, "as many leads of the one side as of the other, and none"
    seldom = attrs.evolve(found, waits=tuple(attrs.evolve(each, in_a_round=0.1) for each in found.waits))
    assert (seldom.longest_wait is None) == (not found.waits)
    assert sum(chance.value for _, chance in found.game.wins) + found.game.drawn.value == pytest.approx(1.0, abs=1e-6)
    assert found.band.usual.wins == found.game.wins
    if net.match.one_round:
        assert [chance.value for _, chance in found.game.wins] == [chance.value for _, chance in odds.wins]


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
def test_everything_is_told_in_lines_that_fit(name: str) -> None:
    sections = told(told_of(name))
    assert {"How long a round lasts", "What a pupil does in a round", "How it was found"} <= {s.title for s in sections}
    short = [line for section in sections for line in section.lines if "watcher" not in line]
    assert all(len(line) <= 76 for line in short), [line for line in short if len(line) > 76]
    assert {len(line) - len(line.lstrip()) for line in winners(told_of(name))} <= {0, 4}, "one under the other"
    assert not any("nan" in line.split() or "result 1" in line for line in short)


@pytest.mark.parametrize("name", ["heron-and-pike", "cairn-keepers"])
def test_what_there_is_to_say_is_told_and_nothing_else(name: str) -> None:
    """Turns of each side where they differ, of each skill where there are several, what moves the answer most."""
    found = told_of(name)
    usual = attrs.evolve(found.band.usual, minutes=Figure(3.0))
    swings = [Swing("", f"swing {by}", (), found.band.usual, usual, "mean length", by, sure)
              for by, sure in ((0.3, True), (0.2, False), (0.1, True), (0.0, True))]  # fmt: skip
    [side, *_] = found.net.sides
    uneven = (*found.turns.by_side[1:], (side, Figure(9876.0)))
    for skills in (found.turns.by_skill[:1], (("kick", Figure(8765.0)), ("roll", Figure(7654.0)))):
        for by_side in (uneven, tuple((each, Figure(1.0)) for each in found.net.sides)):
            for never in (0.0, 0.5):
                turns = attrs.evolve(found.turns, by_skill=skills, by_side=by_side)
                odds = attrs.evolve(found.odds, never=Figure(never))
                asked = attrs.evolve(found, turns=turns, odds=odds, swings=tuple(swings))
                lines = "\n".join(line for part in (*told(asked), *told_in_detail(asked)) for line in part.lines)
                assert ("9876.0" in lines) == (by_side is uneven)
                assert ("8765.0" in lines and "7654.0" in lines) == (len(skills) > 1), lines
                assert ("never over by itself" in lines) == (never > 0)
                assert [each.about in lines for each in swings] == [True, False, True, False]


def test_mirrored_sides_are_even() -> None:
    for name in ("lantern-row", "heron-and-pike", "ferry-bench"):
        (_, one), (_, other) = told_of(name).odds.wins
        assert one.value == pytest.approx(other.value, abs=1e-9)


def test_a_simulated_forecast_agrees_and_says_its_margins() -> None:
    game = library_game("heron-and-pike")
    net = net_in(game)
    part = explore(net, Budget(states=500))
    assert isinstance(part, StateSpace) and not part.complete
    seen = forecast(part, NORMS, KIT, play=Play(rounds=800, batch=800), compare=False)
    exact = told_of("heron-and-pike")
    assert seen is not None and seen.simulated and not exact.simulated
    played, known = seen.course.length, exact.course.length
    assert abs(played.mean.value - known.mean.value) < 2 * played.mean.margin
    assert abs(played.median.value - known.median.value) < 2 * played.median.margin
    for (_, one), (_, other) in zip(seen.odds.wins, exact.odds.wins, strict=True):
        assert 0 < abs(one.value - other.value) < 2 * one.margin and other.margin == 0
    assert seen.turns.each.value == pytest.approx(exact.turns.each.value, abs=2 * seen.turns.each.margin)
    waiting = next(each for each in seen.standings if each.name == WAITING)
    exactly = next(each for each in exact.standings if each.name == WAITING)
    assert abs(waiting.share.value - exactly.share.value) < 2 * waiting.share.margin
    assert "seed 1" in "".join(line for section in told_then(seen) for line in section.lines), "without being asked"
    assert seen.course.seed == 1


def test_a_net_too_large_to_explore_is_played() -> None:
    game = library_game("lantern-row")
    found = forecast(net_in(game, {"north": 14, "south": 14}), NORMS, KIT, play=QUICK)
    assert found is not None and found.simulated
    assert found.band.low is not None and found.band.high is not None
    assert found.band.low.minutes.value > found.band.high.minutes.value
    assert len(found.swings) == 4 and found.swings[0].by >= found.swings[1].by >= found.swings[2].by


def test_who_stops_at_once_gets_no_forecast() -> None:
    stopped = Play(keep_going=lambda what, done, of: False)
    assert forecast(net_of_library("lantern-row"), NORMS, KIT, play=stopped) is None


def test_ability_and_swings() -> None:
    """An abler class ends Lantern Row sooner; a norm moved alone moves the answer as `chances` moves."""
    found = forecast(space_of(net_of_library("lantern-row")), NORMS, KIT, play=QUICK)
    assert found is not None
    band = found.band
    assert band.low is not None and band.high is not None
    assert band.low.minutes.value > band.usual.minutes.value > band.high.minutes.value
    assert band.low.turns.value < band.usual.turns.value < band.high.turns.value
    assert [swing.by for swing in found.swings] == sorted((swing.by for swing in found.swings), reverse=True)
    first = found.swings[0]
    assert first.table == "aim across" and "sideways" in first.about
    again = exact_course(
        space_of(found.net), chances(found.net, NORMS, KIT, instead={"aim across": "low"}), 30.0, quantiles=False
    )
    assert first.low.minutes.value == pytest.approx(again.length.mean.value)
    assert {each.table for each in first.assumptions} == {"aim across"}
    assert any(each.table == "pace fetch" and each.low < each.usual < each.high for each in found.assumptions)


def test_remixes_move_the_forecast_as_they_should() -> None:
    base = library_game("lantern-row")
    nearer = net_in(remixed(base, "shorter-court"))
    plain = exact_course(space_of(net_in(base)), chances(net_in(base), NORMS, KIT), 30.0)
    shorter = exact_course(space_of(nearer), chances(nearer, NORMS, KIT), 30.0)
    assert shorter.length.mean.value < plain.length.mean.value


def test_ages_come_from_the_game() -> None:
    assert ages_of(net_of_library("lantern-row")) == (8.0, 12.0)
    assert ages_of(attrs.evolve(net_of_library("lantern-row"), transitions=())) == (8.0, 12.0)


def test_a_space_that_takes_too_much_to_solve_is_played(monkeypatch: pytest.MonkeyPatch) -> None:
    space = space_of(net_of_library("heron-and-pike"))
    constants = chances(space.net, NORMS, KIT)
    guessed = solving_products(space, constants, 30.0)
    assert 1e6 < guessed < work.MOST_PRODUCTS
    assert space.net.bell is not None
    clock = attrs.evolve(space.net.bell, after_s=4_800.0)
    longer = attrs.evolve(space, net=attrs.evolve(space.net, bell=clock))
    assert solving_products(longer, constants, 30.0) == pytest.approx(10 * guessed, rel=0.01)
    assert not told_of("heron-and-pike").simulated
    for limit in ("MOST_PRODUCTS", "MOST_EDGES"):
        with monkeypatch.context() as patched:
            patched.setattr(work, limit, 10)
            found = forecast(space, NORMS, KIT, play=Play(rounds=50, batch=50), compare=False)
        assert found is not None and found.simulated


def test_work_for_comparing_is_counted(monkeypatch: pytest.MonkeyPatch) -> None:
    """The band is always worked out; assumptions are looked at until so many products were made."""
    space = space_of(net_of_library("lantern-row"))
    one = solving_products(space, chances(space.net, NORMS, KIT), 30.0)
    monkeypatch.setattr(work, "QUICK_PRODUCTS", 0.0)
    found = {}
    for courses in (0, 6, 100):
        monkeypatch.setattr(work, "ALL_PRODUCTS", courses * one)
        told_now = forecast(space, NORMS, KIT, play=QUICK)
        assert told_now is not None and told_now.band.low is not None and told_now.band.high is not None
        found[courses] = len(told_now.swings)
    assert found[0] == 0 < found[6] < found[100] == work.LIKELY

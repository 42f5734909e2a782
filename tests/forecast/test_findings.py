"""Findings of the forecast: a game that is wanting, and one that is not; margins and margins of chance."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

import attrs
import pytest

import library
from compose.check import StateSpace, explore
from compose.forecast.course import Figure
from compose.forecast.findings.findings import forecast_findings
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.lesson import Active
from compose.forecast.rounds.simulate import Play, Waits
from compose.forecast.telling.telling import told_first
from compose.net.attempt import Attempt
from compose.net.net import Bell, End, Net
from compose.staging.minutes import lesson_of
from grammar.core.values import At, Landmark, Presence, SideId, Spot
from grammar.finding import Basis, Finding, Severity
from tests.check.build import ALWAYS, ATTEMPT, Builder
from tests.check.worded import worded

NORMS, KIT = library.norms(), library.kit_names()
PLAY = Play(rounds=300, batch=300)


def told(net: Net) -> Forecast:
    space = explore(net)
    assert isinstance(space, StateSpace)
    found = forecast(space, NORMS, KIT, play=PLAY, compare=False)
    assert found is not None
    return found


def found(forecast_: Forecast, code: str) -> list[Finding]:
    return [finding for finding in forecast_findings(forecast_, NORMS) if finding.code == code]


def at_a_pace(per_minute: float) -> Attempt:
    return attrs.evolve(ATTEMPT, skill="roll", said_per_minute=per_minute, said_chance=1.0)


def race(paces: Mapping[str, float], to: int, players: Mapping[str, int] | None = None, minutes: float = 6.0) -> Net:
    """First to so many points, each side at its own pace, until the bell; everybody plays all the time."""
    play = Builder(*paces)
    for side in paces:
        play.place(side, 0, to, side=side)
        number = 2 if players is None else players[side]
        play.place(f"player/{side}/-/in", number, number, "player", side)
    told_ = play.rule("first to so many")
    for side, pace in paces.items():
        points = play.shift(side, 1, told_)
        play.may(f"{side} scores", points, side=side, attempt=at_a_pace(pace))
        play.end(f"{side} wins", side, play.at_least(side, to), told_)
    clock = play.rule("after so long: a draw")
    bell = Bell(minutes * 60, (End(worded("a draw"), None, ALWAYS, clock),), clock)
    return play.net(bell, mirrored=tuple(paces))


def test_lopsided() -> None:
    [finding] = found(told(race({"north": 3.0, "south": 2.0}, 5)), "F-lopsided")
    assert finding.severity is Severity.WARNING and finding.basis is Basis.COMPUTED
    assert finding.title.startswith("North wins") and "mirrored" in finding.title
    odds = dict(finding.numbers)
    assert odds["win odds of north"] > odds["win odds of south"] + 0.2
    assert finding.place.line == 1
    assert not found(told(race({"north": 3.0, "south": 3.0}, 5)), "F-lopsided")
    assert not found(told(attrs.evolve(race({"north": 3.0, "south": 2.0}, 5), mirrored=())), "F-lopsided")


def test_lopsided_only_a_little_is_a_note() -> None:
    [finding] = found(told(race({"herons": 3.0, "pikes": 2.7}, 5)), "F-lopsided")
    assert finding.severity is Severity.NOTE and finding.title.startswith("The herons win")


def test_lopsided_by_numbers_is_said_as_such() -> None:
    uneven = race({"north": 3.0, "south": 2.0}, 5, {"north": 3, "south": 2})
    [finding] = found(told(uneven), "F-lopsided")
    assert finding.severity is Severity.NOTE
    assert "3 north and 2 south" in finding.title and "odd pupil" in finding.hint


def test_a_difference_within_chance_is_not_lopsided() -> None:
    """Seen in few rounds, the same odds are no finding; in many they are."""
    net = race({"north": 3.0, "south": 2.6}, 5)
    few = forecast(net, NORMS, KIT, play=Play(rounds=60, batch=60), compare=False)
    many = forecast(net, NORMS, KIT, play=Play(rounds=9_000, batch=3_000), compare=False)
    assert few is not None and many is not None
    assert not found(few, "F-lopsided")
    [finding] = found(many, "F-lopsided")
    assert finding.basis is Basis.SIMULATED


def test_length_of_a_round() -> None:
    slow, quick = race({"north": 0.2, "south": 0.2}, 5, minutes=90.0), race({"north": 20.0, "south": 20.0}, 3)
    [long] = found(told(slow), "F-long-round")
    assert long.severity is Severity.WARNING and dict(long.numbers)["mean minutes"] > 12
    [short] = found(told(quick), "F-short-round")
    assert "only" in short.title and dict(short.numbers)["mean minutes"] < 1
    assert not found(told(slow), "F-short-round") and not found(told(quick), "F-long-round")
    fine = told(race({"north": 1.0, "south": 1.0}, 5))
    assert not found(fine, "F-long-round") and not found(fine, "F-short-round")


def test_a_long_round_points_at_the_clock_where_that_stops_it() -> None:
    slow = told(race({"north": 0.01, "south": 0.01}, 5, minutes=20.0))
    [finding] = found(slow, "F-long-round")
    assert finding.place.line == 2


def test_nothing_is_advised_of_kit_that_a_game_has_not() -> None:
    """A race for points: no targets, no balls, nothing thrown."""
    slow, quick = race({"north": 0.2, "south": 0.2}, 5, minutes=90.0), race({"north": 20.0, "south": 20.0}, 3)
    [long], [short] = found(told(slow), "F-long-round"), found(told(quick), "F-short-round")
    for hint in (long.hint, short.hint):
        assert not {"target", "targets", "ball", "balls", "aim"} & set(re.findall(r"\w+", hint)), hint
        assert "points" in hint
    stopped = told(race({"north": 1.0, "south": 1.0}, 50, minutes=0.5))
    [short] = found(stopped, "F-short-round")
    assert short.hint.startswith("Give the clock more time")


@pytest.mark.parametrize(
    ("points", "decides", "expected"),
    [(50, True, Severity.NOTE), (50, False, Severity.WARNING), (5, True, None), (5, False, None)],
)
def test_points_that_no_round_has_time_for(points: int, decides: bool, expected: Severity | None) -> None:
    """Five minutes at two tries a minute: nobody gets to 50; that is to mend where the bell has no winner either."""
    net = race({"north": 1.0, "south": 1.0}, points, minutes=5.0)
    assert net.bell is not None
    ahead = tuple(attrs.evolve(net.bell.results[0], winner=side) for side in net.sides[:1])
    game = told(attrs.evolve(net, bell=attrs.evolve(net.bell, results=ahead)) if decides else net)
    assert [finding.severity for finding in found(game, "F-out-of-reach")] == ([expected] if expected else [])


def test_a_lesson_of_which_nothing_is_said_is_told_as_usual() -> None:
    game = told(race({"north": 1.0, "south": 1.0}, 5))
    titles = [section.title for section in told_first(game)]
    assert any(title.startswith("In a lesson of") and "usual" in title for title in titles)
    said = attrs.evolve(game, lesson=lesson_of(NORMS, (8.0, 12.0), 40.0))
    assert "In a lesson of 40 min" in [section.title for section in told_first(said)]


def queue_game(freed: float) -> Net:
    """Six pupils: each is sent to the queue once a minute and the teacher frees the first at a pace."""
    play = Builder("north")
    play.place("player/north/-/in", 6, 6, "player", "north")
    play.place("player/north/-/out queue", 0, 6, "player", "north")
    out, back = play.rule("sent out"), play.rule("freed")
    here, there = "player/north/-/in", "player/north/-/out queue"
    sent = play.move(here, there, out)
    play.may("a try fails", sent, side="north", rate=play.rate(here), attempt=at_a_pace(1.0))
    play.may(
        "the teacher frees the first",
        play.move(there, here, back),
        guard=play.at_least(there, 1),
        attempt=at_a_pace(freed),
    )
    return play.net(Bell(600.0, (), play.rule("after 10 min")), open_ended=True)


def test_waits_and_idle_pupils() -> None:
    slow, quick = told(queue_game(0.5)), told(queue_game(60.0))
    [wait] = found(slow, "F-long-wait")
    assert wait.severity is Severity.WARNING and wait.basis is Basis.SIMULATED
    assert "in the out queue" in wait.title and wait.place.line == 1
    [idle] = found(slow, "F-idle-pupils")
    assert idle.severity is Severity.WARNING and idle.basis is Basis.COMPUTED and "waiting" in idle.title
    assert dict(idle.numbers)["waiting"] == pytest.approx(1 - slow.standings[0].share.value)
    assert not found(quick, "F-long-wait") and not found(quick, "F-idle-pupils")


def test_few_turns() -> None:
    [few] = found(told(race({"north": 0.5, "south": 0.5}, 3)), "F-few-turns")
    assert few.severity is Severity.WARNING and "one every" in few.title
    [some] = found(told(race({"north": 1.5, "south": 1.5}, 9)), "F-few-turns")
    assert some.severity is Severity.NOTE
    assert not found(told(race({"north": 5.0, "south": 5.0}, 9)), "F-few-turns")


def test_active_minutes() -> None:
    game = told(race({"north": 3.0, "south": 3.0}, 5))
    for active, expected in (
        (Active(0.2, 0.3, 0.4, 0.5, 0.3), [Severity.WARNING]),
        (Active(0.3, 0.45, 0.6, 0.7, 0.4), [Severity.NOTE]),
        (Active(0.4, 0.55, 0.7, 0.8, 0.5), []),
    ):
        assert [f.severity for f in found(attrs.evolve(game, active=active), "F-inactive")] == expected


def out_for_good(chance_of_end: float) -> Net:
    """A ball is thrown for ever, unless one throw in so many ends the round; no clock."""
    play = Builder()
    play.place("player/-/in", 2, 2, "player")
    play.place("over", 0, 1)
    rule = play.rule("one throw in very many ends it")
    end = play.shift("over", 1, rule)
    seldom = attrs.evolve(at_a_pace(60.0), name="seldom", said_chance=chance_of_end, catchable=False)
    play.may("it is over", end, attempt=seldom, outcome="success")
    play.end("over", None, play.at_least("over", 1), rule)
    return play.net()


@pytest.mark.parametrize("chance_of_end", [0.0, 1e-18, 1e-13, 1e-7, 1e-3])
def test_a_round_that_no_lesson_holds_is_to_mend(chance_of_end: float) -> None:
    """From a chance that no double can tell from never to one in a thousand: memory and time stay small."""
    game = told(out_for_good(chance_of_end))
    [finding] = found(game, "F-long-round")
    assert finding.severity is Severity.WARNING
    mean = 1 / (60 * chance_of_end) if chance_of_end else math.inf
    assert game.course.length.mean.value <= mean * (1 + 1e-6)
    if game.course.clock_rings:
        assert game.course.length.mean.value == pytest.approx(mean, rel=1e-6)
        assert game.course.length.median.value == pytest.approx(math.log(2) * mean, rel=1e-3)
    else:
        assert "100 % of the rounds are still going" in finding.title


def test_a_short_lesson_hides_no_endless_round() -> None:
    space = explore(out_for_good(0.0))
    assert isinstance(space, StateSpace)
    short = forecast(space, NORMS, KIT, lesson=lesson_of(NORMS, (8.0, 12.0), 5.0), play=PLAY, compare=False)
    assert short is not None and found(short, "F-long-round")


FROZEN = At(Spot(Landmark.FROZEN, SideId("north")))


@pytest.mark.parametrize("standing", [FROZEN, Presence.PLAYING, Presence.OUT])
def test_waits_in_no_place(standing: Presence | At) -> None:
    game = told(queue_game(0.5))
    playing, waiting = game.net.places
    places = (playing, attrs.evolve(waiting, standing=standing))
    [wait] = found(attrs.evolve(game, net=attrs.evolve(game.net, places=places)), "F-long-wait")
    where = {FROZEN: "frozen on the spot", Presence.PLAYING: "for a turn", Presence.OUT: "out for the round"}[standing]
    assert f"waits {where} one in ten" in wait.title


def test_waits_that_chance_may_have_made_long_are_not_told() -> None:
    game = told(queue_game(60.0))
    unsure = Waits(1, 3.0, Figure(1.0, 0.5), Figure(2.5, 2.0))
    sure = Waits(1, 3.0, Figure(1.0, 0.05), Figure(2.5, 0.1))
    assert not found(attrs.evolve(game, waits=(unsure,)), "F-long-wait")
    assert found(attrs.evolve(game, waits=(sure,)), "F-long-wait")

"""Parts of the forecast: the lesson, who takes part, turns, points past their bound, play without an end."""

from __future__ import annotations

import math

import attrs
import pytest

import library
from compose.check import StateSpace, explore
from compose.forecast.activity import Activity
from compose.forecast.chain.exact import exact_course
from compose.forecast.chances.chances import chances
from compose.forecast.course import Figure
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.lesson import active_time
from compose.forecast.points import ROOM, passes_bound, points_decide, with_room
from compose.forecast.rounds.simulate import Play
from compose.forecast.standings import PLAYING, WAITING, Standing, idle_places, standing_of, standings
from compose.forecast.telling.telling import told
from compose.forecast.turns import turns
from compose.forecast.work import Work
from compose.net.net import Bell, Net
from compose.staging.minutes import lesson_of
from tests.check.build import ATTEMPT, Builder
from tests.check.cases import bell
from tests.interpreter.sheets import library_game, net_in

NORMS, KIT = library.norms(), library.kit_names()
QUICK = Play(rounds=200, batch=200)
AGES = (8.0, 12.0)
PASS = attrs.evolve(ATTEMPT, skill="pass")


def space_of(net: Net) -> StateSpace:
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    return space


def test_the_lesson_and_the_rounds_in_it() -> None:
    lesson = lesson_of(NORMS, AGES)
    assert 40 < lesson.minutes < 50 and lesson.play < lesson.class_time < lesson.minutes
    assert lesson.rounds(lesson.play) == pytest.approx(1.0)
    assert lesson.rounds(2 * lesson.play) == pytest.approx(0.5)
    rounds = lesson.rounds(4.0)
    assert rounds * 4.0 + (rounds - 1) * lesson.again == pytest.approx(lesson.play)
    assert attrs.evolve(lesson, minutes=5.0).play == 0.0 and lesson_of(NORMS, AGES, 60.0).minutes == 60.0


def test_who_waits_is_less_active() -> None:
    lesson, doing = lesson_of(NORMS, AGES), Activity(turns=0.5, followed=0.5, slower=1.0)
    busy = (Standing(PLAYING, Figure(1.0), ()),)
    half = (Standing(PLAYING, Figure(0.5), ()), Standing(WAITING, Figure(0.5), ()))
    one, other = (active_time(NORMS, AGES, lesson, shares, doing, 5.0) for shares in (busy, half))
    in_play = 0.5 * 0.80 + 0.5 * (0.5 * 0.65 + 0.5 * 0.15)
    assert one.usual > other.usual and one.in_round == pytest.approx(in_play)
    assert other.in_round == pytest.approx((in_play + 0.05) / 2)
    assert active_time(NORMS, AGES, lesson, busy, doing, 0.5).usual < one.usual, "short rounds are set up more often"
    assert active_time(NORMS, AGES, attrs.evolve(lesson, minutes=4.0), busy, doing, 5.0).usual == 0.0
    played = in_play * (lesson.play - (lesson.rounds(5.0) - 1) * lesson.again)
    around = lesson.setting_up + lesson.clearing + (lesson.rounds(5.0) - 1) * lesson.again
    assert one.usual == pytest.approx((played + 0.5 * around) / lesson.class_time)


def test_what_takes_longer_is_less_active() -> None:
    usual, slow = Activity(0.4, 0.6, 1.0), Activity(0.4, 0.6, 1.5)
    assert slow.active(0.8, 0.6, 0.2) == pytest.approx(usual.active(0.8, 0.6, 0.2) / 1.5)


def queue_game(may_catch: bool) -> Net:
    """Two areas: a court and a far bench that takes part in play only where passes go to it; and a queue."""
    play = Builder("north")
    for name, start in (("player/north/-/in", 3), ("player/north/-/far bench", 1), ("player/north/-/out queue", 1)):
        play.place(name, start, 5, "player", "north")
    told = play.rule("pass")
    attempt = attrs.evolve(PASS, aim="mate" if may_catch else "none")
    guard = play.at_least("player/north/-/far bench", 1)
    play.may("a pass", rate=play.rate("player/north/-/in"), guard=guard, rules=(told,), side="north", attempt=attempt)
    play.may("the teacher looks on", rules=(told,))
    return play.net(Bell(120.0, (), play.rule("after 2 min")))


def test_standings_go_by_who_takes_part() -> None:
    assert list(standing_of(queue_game(may_catch=True)).values()) == [PLAYING, PLAYING, WAITING]
    assert list(standing_of(queue_game(may_catch=False)).values()) == [PLAYING, "on a bench", WAITING]
    net = queue_game(may_catch=False)
    course = exact_course(space_of(net), (1.0, 5.0), 30.0)
    assert {each.name: each.share.value for each in standings(net, course)} == pytest.approx(
        {PLAYING: 0.6, "on a bench": 0.2, WAITING: 0.2}
    )
    assert idle_places(net) == (1, 2)


def test_whoever_comes_back_by_the_clock_has_waited() -> None:
    """A wait that ends by itself is nobody's act; the rate that ends it reads the queue all the same."""
    play = Builder("north")
    inside, queue = "player/north/-/in", "player/north/-/task queue"
    play.place(inside, 1, 1, "player", "north")
    play.place(queue, 0, 1, "player", "north")
    told = play.rule("whoever waits in the task queue comes back after 30 s")
    play.may("goes out", play.move(inside, queue, told), rate=play.rate(inside), side="north")
    play.may("comes back", play.move(queue, inside, told), rate=play.rate(queue), forced=True)
    net = play.net(Bell(60 * 500.0, (), play.rule("after 500 min")))
    assert list(standing_of(net).values()) == [PLAYING, WAITING]
    # Out once a minute, back after half a minute: a third of the time is spent waiting.
    shares = standings(net, exact_course(space_of(net), (1.0, 2.0), 30.0))
    assert {each.name: each.share.value for each in shares} == pytest.approx({PLAYING: 2 / 3, WAITING: 1 / 3}, abs=1e-3)


def test_turns_count_players_alone() -> None:
    """Three players try once a minute each, five pupils in all; what the teacher does is no turn."""
    net = queue_game(may_catch=True)
    found = turns(net, exact_course(space_of(net), (1.0, 5.0), 30.0))
    assert found.each.value == pytest.approx(3 / 5)
    assert [(skill, round(figure.value, 9)) for skill, figure in found.by_skill] == [("pass", 0.6)]


def uncounted(decide: bool) -> Net:
    """Points a bound of 5 is too small for; they decide at the bell, or not."""
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, 0, 5, side=side)
    told = play.rule("points")
    for side in ("north", "south"):
        play.may(f"{side} scores", play.shift(side, 1, told), side=side)
    clock = bell(play, after_s=120.0, draw=not decide)
    return play.net(clock, open_ended=True)


def test_points_past_the_bound_are_counted_by_playing() -> None:
    surely = attrs.evolve(PASS, said_per_minute=6.0, said_chance=1.0)
    for decide in (False, True):
        net = uncounted(decide)
        net = attrs.evolve(net, transitions=tuple(attrs.evolve(t, attempt=surely) for t in net.transitions))
        space = space_of(net)
        course = exact_course(space, chances(net, NORMS, KIT), 30.0)
        assert passes_bound(net, course) and points_decide(net) == decide
        found = forecast(space, NORMS, KIT, play=Play(rounds=500, batch=500), compare=False)
        assert found is not None and found.passed_bound
        assert found.simulated == decide
        for _, points in found.points:
            assert abs(points.value - 12.0) < 2 * points.margin + 0.2
        if decide:
            assert found.odds.of("north") == pytest.approx(0.42, abs=0.07), "no longer always level at the bound"


def test_for_the_able_too_points_past_the_bound_decide() -> None:
    """At usual ability both sides score half of what the check counts to, at high ability about all of it: who has
    more is then found by playing on, and no draw of two sides at their bound."""
    work = Work(space_of(net_in(library_game("cobble-lane"))), NORMS, KIT, None, Play(rounds=2_000, batch=500))
    usual, able = work.compared(), work.compared("high")
    assert usual is not None and able is not None
    assert dict(able.wins)["millers"].value == pytest.approx(dict(usual.wins)["millers"].value, abs=0.1)


def test_a_bound_that_a_finish_asks_for_stays() -> None:
    net = net_in(library_game("millrace-roll"))
    assert with_room(net).places == net.places
    assert not passes_bound(net, exact_course(space_of(net), chances(net, NORMS, KIT), 30.0, quantiles=False))
    bounded = uncounted(decide=False)
    assert {place.capacity for place in with_room(bounded).places} == {ROOM}


def test_open_play_is_cut_at_the_lessons_end() -> None:
    """A game without a clock that may never end is followed until the lesson is over, and says so."""
    play = Builder("north")
    play.place("player/north/-/in", 2, 2, "player", "north")
    told = play.rule("for ever")
    play.may("a try", rate=play.rate("player/north/-/in"), side="north", rules=(told,))
    found = forecast(space_of(play.net()), NORMS, KIT, play=QUICK, compare=False)
    assert found is not None
    assert found.course.clock_minutes == pytest.approx(found.lesson.play) and not found.course.clock_rings
    assert found.odds.unsaid.value == pytest.approx(1.0) and math.isfinite(found.course.length.mean.value)
    assert any("still going" in line for section in told_lines(found) for line in section)


def told_lines(found: Forecast) -> list[tuple[str, ...]]:
    return [section.lines for section in told(found)]

"""The whole forecast: numbers that must add up, move the right way, and hold still under mirror images."""

from __future__ import annotations

import math
from functools import cache

import attrs
import pytest

import library
from compose.check import Budget, StateSpace, explore
from compose.forecast.assumptions import ages_of
from compose.forecast.chances import chances
from compose.forecast.exact import exact_course, solving_seconds
from compose.forecast.forecast import Forecast, forecast
from compose.forecast.lesson import active_time, lesson_of
from compose.forecast.points import ROOM, passes_bound, points_decide, with_room
from compose.forecast.simulate import Play
from compose.forecast.standings import PLAYING, WAITING, idle_places, pupils_of, standing_of, standings
from compose.forecast.telling import summary, told
from compose.forecast.turns import turns
from compose.net.net import Bell, Net
from tests.check.build import ATTEMPT, Builder
from tests.check.cases import bell
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
    found = forecast(space_of(net_in(game)), NORMS, KIT, game=game, play=QUICK, compare=False)
    assert found is not None
    return found


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
    if course.lead is not None:
        assert course.lead.sum() == pytest.approx(1.0, abs=1e-8)
    for match in (found.match, found.halves):
        if match is not None:
            level = match.drawn if found.match is not None else found.halves.level  # type: ignore[union-attr]
            assert sum(chance for _, chance in match.wins) + level == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
def test_everything_is_told_in_lines_that_fit(name: str) -> None:
    sections = told(told_of(name))
    assert {"How long a round lasts", "What a pupil does in a round", "How it was found"} <= {s.title for s in sections}
    short = [line for section in sections for line in section.lines if "watcher" not in line]
    assert all(len(line) <= 76 for line in short), [line for line in short if len(line) > 76]
    assert all(sentence.endswith(".") and "nan" not in sentence for sentence in summary(told_of(name)))
    assert not any("nan" in line.split() or "result 1" in line for line in short)


def test_mirrored_sides_are_even() -> None:
    for name in ("lantern-row", "heron-and-pike", "ferry-bench"):
        (_, one), (_, other) = told_of(name).odds.wins
        assert one.value == pytest.approx(other.value, abs=1e-9)


def test_a_simulated_forecast_agrees_and_says_its_margins() -> None:
    game = library_game("heron-and-pike")
    net = net_in(game)
    part = explore(net, Budget(states=500))
    assert isinstance(part, StateSpace) and not part.complete
    seen = forecast(part, NORMS, KIT, game=game, play=Play(rounds=800, batch=800), compare=False)
    exact = told_of("heron-and-pike")
    assert seen is not None and seen.simulated and not exact.simulated
    assert abs(seen.course.length.mean.value - exact.course.length.mean.value) < 2 * seen.course.length.mean.margin
    for (_, one), (_, other) in zip(seen.odds.wins, exact.odds.wins, strict=True):
        assert 0 < abs(one.value - other.value) < 2 * one.margin and other.margin == 0
    assert seen.turns.each.value == pytest.approx(exact.turns.each.value, abs=2 * seen.turns.each.margin)
    waiting = next(each for each in seen.standings if each.name == WAITING)
    exactly = next(each for each in exact.standings if each.name == WAITING)
    assert abs(waiting.share.value - exactly.share.value) < 2 * waiting.share.margin
    assert "seed 1" in "".join(told(seen)[-1].lines)
    assert seen.course.seed == 1


def test_a_net_too_large_to_explore_is_played() -> None:
    game = library_game("lantern-row")
    found = forecast(net_in(game, {"north": 14, "south": 14}), NORMS, KIT, game=game, play=QUICK)
    assert found is not None and found.simulated
    assert found.band.low is not None and found.band.high is not None
    assert found.band.low.minutes.value > found.band.high.minutes.value
    assert len(found.swings) == 4 and found.swings[0].by >= found.swings[1].by >= found.swings[2].by


def test_no_time_at_all_gives_no_forecast() -> None:
    assert forecast(net_of_library("lantern-row"), NORMS, KIT, play=Play(seconds=0.0)) is None


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


def test_two_games_of_the_same_seconds_share_a_lesson() -> None:
    lesson = lesson_of(NORMS, (8.0, 12.0))
    assert 40 < lesson.minutes < 50 and lesson.play < lesson.class_time < lesson.minutes
    assert lesson.rounds(lesson.play) == pytest.approx(1.0)
    assert lesson.rounds(2 * lesson.play) == pytest.approx(0.5)
    rounds = lesson.rounds(4.0)
    assert rounds * 4.0 + (rounds - 1) * lesson.again == pytest.approx(lesson.play)
    assert attrs.evolve(lesson, minutes=5.0).play == 0.0 and lesson_of(NORMS, (8.0, 12.0), 60.0).minutes == 60.0


def test_who_waits_is_less_active() -> None:
    ages = (8.0, 12.0)
    lesson = lesson_of(NORMS, ages)
    busy, waiting = (told_of(name) for name in ("lantern-row", "homestead"))
    one = active_time(NORMS, ages, lesson, busy.standings, 5.0)
    other = active_time(NORMS, ages, lesson, waiting.standings, 5.0)
    assert one.usual > other.usual and one.in_round == pytest.approx(0.70)
    quick = active_time(NORMS, ages, lesson, busy.standings, 0.5)
    assert quick.usual < one.usual, "short rounds are set up more often"
    nothing = active_time(NORMS, ages, attrs.evolve(lesson, minutes=4.0), busy.standings, 5.0)
    assert nothing.usual == 0.0


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


PASS = attrs.evolve(ATTEMPT, skill="pass")


def test_standings_go_by_who_takes_part() -> None:
    assert list(standing_of(queue_game(may_catch=True)).values()) == [PLAYING, PLAYING, WAITING]
    assert list(standing_of(queue_game(may_catch=False)).values()) == [PLAYING, "on a bench", WAITING]
    net = queue_game(may_catch=False)
    course = exact_course(space_of(net), (1.0, 5.0), 30.0)
    assert {each.name: each.share.value for each in standings(net, course)} == pytest.approx(
        {PLAYING: 0.6, "on a bench": 0.2, WAITING: 0.2}
    )
    assert idle_places(net) == (1, 2)


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


def test_a_bound_that_a_finish_asks_for_stays() -> None:
    net = net_of_library("millrace-roll")
    assert with_room(net).places == net.places
    assert not passes_bound(net, told_of("millrace-roll").course)
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
    assert any("lesson ends" in line for section in told_lines(found) for line in section)


def told_lines(found: Forecast) -> list[tuple[str, ...]]:
    return [section.lines for section in told(found)]


def test_remixes_move_the_forecast_as_they_should() -> None:
    base = library_game("lantern-row")
    nearer = net_in(remixed(base, "shorter-court"))
    plain = exact_course(space_of(net_in(base)), chances(net_in(base), NORMS, KIT), 30.0)
    shorter = exact_course(space_of(nearer), chances(nearer, NORMS, KIT), 30.0)
    assert shorter.length.mean.value < plain.length.mean.value


def test_ages_come_from_the_game() -> None:
    assert ages_of(net_of_library("lantern-row")) == (8.0, 12.0)
    assert ages_of(attrs.evolve(net_of_library("lantern-row"), transitions=())) == (8.0, 12.0)


def test_a_space_that_takes_too_long_to_solve_is_played() -> None:
    space = space_of(net_of_library("heron-and-pike"))
    constants = chances(space.net, NORMS, KIT)
    guessed = solving_seconds(space, constants, 30.0)
    assert 0.01 < guessed < 5.0
    assert space.net.bell is not None
    clock = attrs.evolve(space.net.bell, after_s=4_800.0)
    longer = attrs.evolve(space, net=attrs.evolve(space.net, bell=clock))
    assert solving_seconds(longer, constants, 30.0) == pytest.approx(10 * guessed, rel=0.01)
    hurried = forecast(space, NORMS, KIT, play=Play(rounds=50, batch=50, seconds=1.5 * guessed), compare=False)
    assert hurried is None or hurried.simulated
    assert not told_of("heron-and-pike").simulated

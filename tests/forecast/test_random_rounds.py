"""Rounds played at random: against closed forms, against the exact solver, and the same for the same seed."""

from __future__ import annotations

import math

import attrs
import numpy as np
import pytest
from hypothesis import given, settings

import library
from compose.check import explore
from compose.check.space import StateSpace
from compose.forecast.chain.exact import exact_course
from compose.forecast.chances.chances import chances
from compose.forecast.course import Course
from compose.forecast.rounds import simulate as simulate_module
from compose.forecast.rounds.rounds import CUT, STUCK, Rounds
from compose.forecast.rounds.simulate import Play, Simulated, simulate
from compose.net.net import Bell, Comparison, End, Net
from tests.check.build import Builder, rule
from tests.check.chance_games import Game, duel, most_points, out_and_back, race, targets, walk
from tests.check.random_nets import nets
from tests.check.worded import worded
from tests.interpreter.sheets import library_game, net_in

LESSON = 30.0
FAR = 4.5  # standard errors; with these seeds no figure of a sound simulation is as far off


def played(game: Game, rounds: int = 4_000, watched: tuple[int, ...] = (), seed: int = 1) -> Simulated:
    found = simulate(game.net, game.constants, LESSON, Play(rounds=rounds, seed=seed), watched)
    assert found is not None
    return found


UNSEEN = 7 / 600  # what 600 rounds miss once in a thousand times: exp(-7)


def agree(exact: Course, seen: Course) -> None:
    """All that both say lies within a few standard errors."""
    assert seen.rounds is not None
    for one, other in ((exact.by_end, seen.by_end), (exact.by_result, seen.by_result)):
        error = np.sqrt(np.maximum(0.0, one * (1 - one)) / seen.rounds)
        assert (np.abs(one - other) <= FAR * error + 3 / seen.rounds).all()
    assert abs(exact.unsaid - seen.unsaid) <= FAR * math.sqrt(exact.unsaid / seen.rounds) + 3 / seen.rounds
    for name in ("mean", "median", "ninety"):
        said, played_out = getattr(exact.length, name), getattr(seen.length, name)
        # Where all rounds played went alike the margin is none, though one in a hundred may still go otherwise.
        rarer = 0.0 if played_out.margin else UNSEEN * max(said.value, played_out.value)
        assert abs(said.value - played_out.value) <= FAR / 1.96 * played_out.margin + rarer + 1e-9, name
    for one, other, spread, least in (
        (exact.tokens, seen.tokens, seen.spread_tokens, 1e-9),
        (exact.firings, seen.firings, seen.spread_firings, 3 / seen.rounds),
    ):
        unseen = (spread < 1e-9) * UNSEEN * np.maximum(one, other)
        assert (np.abs(one - other) <= FAR * spread + unseen + least).all()
    for place, distribution in exact.points.items():
        spread = np.sqrt(np.maximum(0.0, distribution * (1 - distribution)) / seen.rounds)
        assert (np.abs(distribution - seen.points[place]) <= FAR * spread + 4 / seen.rounds).all()


@pytest.mark.parametrize(
    "game",
    [
        walk(2, 5, 1.0, 1.3),
        race(5, 1.0, 0.8),
        targets(6, 0.5, chosen_at_random=True),
        duel(4, 3),
        out_and_back(3, 1.0, 2.0),
        most_points(1.0, 1.5, 8, 4.0),
    ],
    ids=["walk", "race", "targets", "duel", "queue", "bell"],
)
def test_small_games_as_worked_out(game: Game) -> None:
    space = explore(game.net)
    assert isinstance(space, StateSpace)
    agree(exact_course(space, game.constants, LESSON), played(game).course)


@pytest.mark.sample(4)
@pytest.mark.whole("cloud-drift")
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_library_games_as_worked_out(path: object) -> None:
    net = net_in(library_game(path.stem))  # type: ignore[attr-defined]  # a path
    constants = chances(net, library.norms(), library.kit_names())
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    exact = exact_course(space, constants, LESSON)
    if not exact.clock_rings:
        pytest.skip("may go on for ever: the exact course is cut at the lesson's end")
    seen = simulate(net, constants, LESSON, Play(rounds=600, seed=7, batch=600))
    assert seen is not None
    agree(exact, seen.course)


@given(net=nets())
@settings(max_examples=40, deadline=None, derandomize=True)
def test_random_nets_with_reactions_as_worked_out(net: Net) -> None:
    told = rule("the bell")
    results = (End(worded("north leads"), "north", Comparison(((1, 0), (-1, 1)), ">=", 1), told),)
    timed = attrs.evolve(net, bell=Bell(90.0, results, told))
    space = explore(timed)
    assert isinstance(space, StateSpace)
    if not space.complete or space.chases:
        return
    constants = tuple(1.0 + number / 2 for number in range(len(net.transitions)))
    seen = simulate(timed, constants, LESSON, Play(rounds=800, batch=800))
    assert seen is not None
    agree(exact_course(space, constants, LESSON), seen.course)


def test_the_same_seed_plays_the_same_rounds() -> None:
    one, same, other = (played(duel(3, 3), 500, seed=seed).course for seed in (5, 5, 6))
    assert (one.by_end == same.by_end).all() and one.length == same.length and (one.firings == same.firings).all()
    assert one.length.mean != other.length.mean


def test_batches_are_rounds_of_their_own() -> None:
    game = duel(3, 3)
    together = simulate(game.net, game.constants, LESSON, Play(rounds=900, batch=300))
    assert together is not None and together.course.rounds == 900
    first = simulate(game.net, game.constants, LESSON, Play(rounds=300, batch=300))
    assert first is not None and first.course.length.mean != together.course.length.mean


def test_waits_first_in_first_out() -> None:
    """One pupil out at a time and freed at a rate: the wait is exponential, its 90 % are 2.3 means."""
    play = Builder()
    for name, start in (("in", 1), ("queue", 0)):
        play.place(name, start, 1, "player")
    told = play.rule("out, and back when freed")
    play.may("out", play.move("in", "queue", told), rate=play.rate("in"))
    play.may("freed", play.move("queue", "in", told), rate=play.rate("queue"))
    clock = most_points(1, 1, 1, 200.0).net.bell
    found = simulate(play.net(clock), (1.0, 2.0), LESSON, Play(rounds=400, batch=400), (1,))
    assert found is not None
    [wait] = found.waits
    assert abs(wait.mean.value - 0.5) <= 3 * wait.mean.margin < 0.05
    assert abs(wait.ninety.value - math.log(10) / 2) <= 3 * wait.ninety.margin < 0.1
    assert wait.in_a_round == pytest.approx(200 * 2 / 3, rel=0.05)


def test_waits_keep_the_law_of_little() -> None:
    """Token minutes in a queue are the sum of all waits there, whoever moves in and out in one go."""
    game = out_and_back(4, 1.0, 0.7)
    found = played(game, 800, (1,))
    [wait] = found.waits
    assert wait.in_a_round * wait.mean.value == pytest.approx(float(found.course.tokens[1]), rel=1e-9)


def test_whoever_waits_longest_goes_first() -> None:
    """One waits from the start and another comes, then one and one more are freed, a minute apart on average: both
    have waited two minutes; were the last to come the first to go, one would wait one minute and the other three."""
    play = Builder()
    for name, start in (("in", 1), ("queue", 1), ("freed", 0)):
        play.place(name, start, 2, "player")
    told = play.rule("out, then freed")
    play.may("out", play.move("in", "queue", told), guard=play.at_least("in", 1))
    play.may("freed", play.move("queue", "freed", told), guard=play.at_most("in", 0))
    play.end("all freed", None, play.at_least("freed", 2), told)
    rounds = Rounds(play.net(), (1.0, 1.0), 3_000, np.random.default_rng(3), watched=(1,))
    while rounds.running:
        rounds.step()
    waits, of = rounds.log.waits(1)
    by_going = waits[np.argsort(of, kind="stable")].reshape(-1, 2)
    assert by_going.mean(axis=0) == pytest.approx([2.0, 2.0], abs=0.1)


def test_all_return_at_once_and_places_may_be_set() -> None:
    """A move of everybody and a fresh start both end the waits of all."""
    play = Builder()
    play.place("in", 3, 3, "player")
    play.place("queue", 0, 3, "player")
    told = play.rule("out; all return; again")
    play.may("out", play.move("in", "queue", told), rate=play.rate("in"))
    play.may("all return", play.move("queue", "in", told, None), guard=play.at_least("queue", 2))
    play.may("again", play.assign("in", 3, told), play.assign("queue", 0, told), guard=play.at_least("queue", 1))
    clock = most_points(1, 1, 1, 30.0).net.bell
    found = simulate(play.net(clock), (1.0, 1.0, 0.5), LESSON, Play(rounds=200, batch=200), (1,))
    assert found is not None
    [wait] = found.waits
    assert wait.in_a_round * wait.mean.value == pytest.approx(float(found.course.tokens[1]), rel=1e-9)


def test_stuck_rounds_and_rounds_cut_off_are_told_apart() -> None:
    play = Builder()
    play.place("left", 1, 1)
    told = play.rule("one try")
    play.may("a try", play.shift("left", -1, told), guard=play.at_least("left", 1))
    net = play.net()
    found = simulate(net, (1.0,), LESSON, Play(rounds=50, batch=50))
    assert found is not None and found.course.unsaid == 1.0
    assert not found.course.clock_rings and found.course.clock_minutes == LESSON == found.course.length.mean.value
    rounds = Rounds(net, (1.0,), 20, np.random.default_rng(1))
    while rounds.running:
        rounds.step()
    assert set(rounds.stopped_by) == {STUCK} and (rounds.minutes < LESSON).all()
    timed = Rounds(net, (1.0,), 20, np.random.default_rng(1), 0.1)
    while timed.running:
        timed.step()
    assert set(timed.stopped_by) == {CUT} and timed.minutes == pytest.approx(0.1)


def test_a_batch_cut_short_is_thrown_away() -> None:
    game = race(5, 1.0, 1.0)
    asked: list[int] = []

    def keep_going(what: str, done: int, of: int) -> bool:
        asked.append(done)
        return done < 150

    found = simulate(game.net, game.constants, LESSON, Play(rounds=400, batch=100, keep_going=keep_going))
    assert found is not None and found.course.rounds == 25 + 100
    assert max(asked) >= 150 and found.course.by_end.sum() == pytest.approx(1.0)


def nothing_to_do() -> Net:
    play = Builder()
    play.place("in", 1, 1, "player")
    play.end("over", None, play.at_most("in", 0), play.rule("over"))
    return play.net()


def test_a_net_without_moves() -> None:
    found = simulate(nothing_to_do(), (), LESSON, Play(rounds=10, batch=10))
    assert found is not None and found.course.unsaid == 1.0


def test_fewer_rounds_are_played_where_more_happens(monkeypatch: pytest.MonkeyPatch) -> None:
    """The events allowed are kept to, for a game in which much happens too, and the same rounds are played again."""
    monkeypatch.setattr(simulate_module, "A_STEP", 1)
    game, minute = out_and_back(3, 50.0, 2_000.0), 1.0
    allowed = Play(rounds=400, batch=100, events=12_000)
    one, same = (simulate(game.net, game.constants, minute, allowed) for _ in range(2))
    assert one is not None and same is not None
    assert one.course.rounds == same.course.rounds and one.course.length == same.course.length
    assert one.course.rounds is not None and 1 < one.course.rounds < 400
    assert allowed.events / 4 < one.events < 2 * allowed.events
    assert simulate(game.net, game.constants, minute, Play(rounds=1, events=10)) is None


def test_a_game_without_a_clock_is_followed_until_the_lesson_ends() -> None:
    game = out_and_back(6, 0.05, 10.0)
    found = played(game, 50, (1,))
    assert found.course.unsaid == 1.0 and not found.course.clock_rings
    assert found.course.clock_minutes == found.course.length.mean.value == LESSON

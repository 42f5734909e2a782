"""Waits on an explored space: as from rounds of the net itself, and as the laws of queues say."""

from __future__ import annotations

import math

import numpy as np
import pytest

import library
from compose.check import Budget, StateSpace, explore
from compose.forecast.chain.exact import exact_course
from compose.forecast.chances.chances import chances
from compose.forecast.rounds.on_space import SpaceRounds, carried_out, traffic
from compose.forecast.rounds.simulate import Play, simulate
from compose.forecast.rounds.waits import Waits, waits_of
from compose.forecast.standings import idle_places
from compose.net.from_game import net_of
from compose.net.net import Net
from tests.check.build import Builder
from tests.check.chance_games import most_points, out_and_back
from tests.interpreter.sheets import game_in, library_game, net_in

ROUNDS = 3_000
LESSON = 30.0


def whole(net: Net) -> StateSpace:
    space = explore(net)
    assert isinstance(space, StateSpace) and space.complete
    return space


def waits_on(space: StateSpace, constants: object, place: int, minutes: float, rounds: int = ROUNDS) -> Waits:
    played = SpaceRounds(space, constants, rounds, np.random.default_rng(5), minutes, (place,))  # type: ignore[arg-type]
    while played.running:
        played.step()
    assert (played.minutes <= minutes).all()
    return waits_of(place, [(played.log, rounds)])


def in_or_queue(clock_minutes: float, swaps: bool) -> Net:
    """One plays and may go out; the first of the queue comes back at a rate, or changes places at once."""
    play = Builder()
    play.place("in", 3, 3, "player")
    play.place("queue", 0, 3, "player")
    told = play.rule("out, and back")
    play.may("out", play.move("in", "queue", told), rate=play.rate("in"))
    back = play.move("queue", "in", told)
    if swaps:
        play.may("swap", play.move("in", "queue", told), back, rate=play.rate("in"))
    play.may("freed", back, guard=play.at_least("queue", 1))
    return play.net(most_points(1, 1, 1, clock_minutes).net.bell)


def test_the_wait_for_one_who_frees_is_exponential() -> None:
    """One out at a time, freed at rate 2: mean 1/2 minute, nine in ten within ln 10 / 2."""
    play = Builder()
    play.place("in", 1, 1, "player")
    play.place("queue", 0, 1, "player")
    told = play.rule("out, and back when freed")
    play.may("out", play.move("in", "queue", told), rate=play.rate("in"))
    play.may("freed", play.move("queue", "in", told), rate=play.rate("queue"))
    net = play.net(most_points(1, 1, 1, 200.0).net.bell)
    wait = waits_on(whole(net), (1.0, 2.0), 1, 200.0, 400)
    assert abs(wait.mean.value - 0.5) <= 3 * wait.mean.margin < 0.05
    assert abs(wait.ninety.value - math.log(10) / 2) <= 3 * wait.ninety.margin < 0.1
    assert wait.in_a_round == pytest.approx(200 * 2 / 3, rel=0.05)


@pytest.mark.parametrize("swaps", [False, True])
def test_the_same_waits_as_rounds_of_the_net(swaps: bool) -> None:
    net = in_or_queue(20.0, swaps)
    constants = (0.6, 0.4, 0.8) if swaps else (0.6, 0.8)
    quick = waits_on(whole(net), constants, 1, 20.0)
    slow = simulate(net, constants, LESSON, Play(rounds=ROUNDS, batch=ROUNDS), (1,))
    assert slow is not None
    for one, other in ((quick.mean, slow.waits[0].mean), (quick.ninety, slow.waits[0].ninety)):
        assert abs(one.value - other.value) <= 2 * (one.margin + other.margin) < 0.5
    assert quick.in_a_round == pytest.approx(slow.waits[0].in_a_round, rel=0.02)


@pytest.mark.parametrize("name", ["heron-and-pike", "homestead"])
def test_waits_of_a_library_game_keep_the_law_of_little(name: str) -> None:
    """How many come in a round times how long they wait is the exact number of token minutes in the queue."""
    game = library_game(name)
    net = net_in(game)
    space, constants = whole(net), chances(net, library.norms(), library.kit_names())
    course = exact_course(space, constants, LESSON)
    for place in idle_places(net):
        wait = waits_on(space, constants, place, course.clock_minutes, 1_500)
        minutes = wait.in_a_round * wait.mean.value
        assert minutes == pytest.approx(float(course.tokens[place]), rel=0.08)
        assert minutes > 1


def test_the_mean_wait_is_worked_out() -> None:
    """Minutes spent in the queue by who comes to it, swaps included: the same as in rounds played at random."""
    net = in_or_queue(20.0, True)
    space, constants = whole(net), (0.6, 0.4, 0.8)
    course = exact_course(space, constants, LESSON)
    assert course.spent is not None and course.spent.sum() == pytest.approx(20.0)
    played = SpaceRounds(space, constants, ROUNDS, np.random.default_rng(9), 20.0, (1,))
    comings = played.comings(1, course.spent, course.moments)
    while played.running:
        played.step()
    seen = waits_of(1, [(played.log, ROUNDS)])
    assert comings == pytest.approx(seen.in_a_round, rel=0.01)
    assert abs(float(course.tokens[1]) / comings - seen.mean.value) <= 2 * seen.mean.margin < 0.1


def test_traffic_of_plain_moves_is_the_difference_of_the_counts() -> None:
    """Carrying every edge out once more says the same as the quick way."""
    net = net_in(library_game("heron-and-pike"))
    space = whole(net)
    for place in idle_places(net):
        quick = traffic(space, place)
        for number, transition in enumerate(net.transitions):
            edges = np.flatnonzero(space.transitions == number)[:3_000]
            entered, left = carried_out(space, place, transition.effects, edges)
            assert (quick.entered[edges] == entered).all() and (quick.left[edges] == left).all()


def test_who_goes_in_and_out_in_one_go_is_seen() -> None:
    """A swap leaves the count as it was, and yet one comes and one leaves; where nobody waits the one comes straight
    back, and has not waited."""
    net = in_or_queue(5.0, True)
    space = whole(net)
    swaps = np.flatnonzero(space.transitions == 1)
    through = traffic(space, 1)
    waited = space.encoding.markings(space.codes)[space.sources()[swaps], 1] > 0
    assert waited.any() and not waited.all()
    assert (through.entered[swaps] == waited).all() and (through.left[swaps] == waited).all()


@pytest.mark.parametrize(("on_bench", "mean_minutes"), [(2, 2.0), (5, 4.0)])
def test_who_sits_on_the_bench_waits_till_their_turn(on_bench: int, mean_minutes: float) -> None:
    """Of five who play as many go off as come on: those who go behind the bench and straight in again never wait."""
    sheet = f"""
game Bench
space
  court 24 m by 12 m, in one piece
  mill bench: beside each half
sides
  north and south, 5 to 14 players each, mirrored
kit
  1 football
  1 goal for each side, like a goal
set-up
  goals on the back line of their side
  {on_bench} players of each side on the mill bench
  north begins with the football
play
  players kick a football into the goal of the other side
when
  every {"2" if on_bench == 2 else "4"} min: all players change places with all on the mill bench
finish
  after 12 min: nobody wins
"""
    net = net_of(game_in(sheet.lstrip()), library.granted_sheet(), {"north": 5 + on_bench, "south": 5 + on_bench}).value
    assert net is not None
    place = next(each for each in idle_places(net) if net.places[each].side == "north")
    space, constants = whole(net), chances(net, library.norms(), library.kit_names())
    wait = waits_on(space, constants, place, 12.0, 200)
    assert wait.mean.value == pytest.approx(mean_minutes)
    assert wait.in_a_round == pytest.approx(on_bench * 12 / mean_minutes)
    course = exact_course(space, constants, LESSON)
    assert course.spent is not None
    worked_out = SpaceRounds(space, constants, 1, np.random.default_rng(1), 12.0, (place,))
    assert worked_out.comings(place, course.spent, course.moments) == pytest.approx(wait.in_a_round)


def test_rounds_do_not_leave_the_space() -> None:
    game = out_and_back(12, 1.0, 1.0)
    part = explore(game.net, Budget(states=4))
    assert isinstance(part, StateSpace) and not part.complete
    with pytest.raises(ValueError, match="not whole"):
        SpaceRounds(part, game.constants, 10, np.random.default_rng(1))

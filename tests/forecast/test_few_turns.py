"""What is advised where pupils have few turns or move little: more balls where they are few, fewer waiting where some
wait."""

from __future__ import annotations

import attrs
from test_findings import at_a_pace, found, queue_game, told

from compose.forecast.lesson import Active
from compose.net.net import Bell, Net
from tests.check.build import Builder


def one_ball(thing: str = "ball") -> Net:
    """Eight play by the clock with one ball (or what else is counted), and nobody is ever out."""
    play = Builder("north")
    play.place("player/north/-/in", 8, 8, "player", "north")
    play.place("ball", 1, 1, thing)
    told_ = play.rule("roll")
    rate = play.rate("player/north/-/in", "ball")
    play.may("a roll", rules=(told_,), side="north", rate=rate, attempt=at_a_pace(2.0))
    return play.net(Bell(300.0, (), told_), open_ended=True)


def test_few_turns_with_few_balls_asks_for_balls() -> None:
    [finding] = found(told(one_ball()), "F-few-turns")
    assert "There is 1 ball for 8 pupils" in finding.hint and "bring balls back" in finding.hint
    [without] = found(told(one_ball("load")), "F-few-turns")
    assert "ball" not in without.hint


def test_fewer_waiting_is_advised_where_somebody_waits() -> None:
    for net, waits in ((one_ball(), False), (queue_game(0.5), True)):
        [finding] = found(attrs.evolve(told(net), active=Active(0.2, 0.3, 0.4, 0.5, 0.3)), "F-inactive")
        assert ("fewer waiting" in finding.hint.lower()) is waits

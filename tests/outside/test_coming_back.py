"""Players who wait and come back, and balls that go to and fro: birth-and-death chains.

Sources: the finite-source queue (T. O. Engset 1918; machine repair, L. Kleinrock, Queueing Systems, vol. 1,
Wiley 1975, ch. 3) and first passage of birth-and-death chains (S. Karlin and H. M. Taylor, A First Course in
Stochastic Processes, 2nd ed. 1975, ch. 4), all from memory; P. and T. Ehrenfest 1907 and M. Kac, "Random walk
and the theory of Brownian motion", American Mathematical Monthly 54, 1947 (from memory). Worked out here.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest

from compose.check import markings
from tests.outside.whole_way import Played

WAITING_LINE = """
game Waiting Line
space
  court 16 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 1 to 12 players each
kit
  12 soft balls, like a foam ball
  1 ring for each side, like a hanging hoop
set-up
  soft balls in the half of north
  ring behind the back line of their side
play
  players stay in their half
  north players underarm throw a soft ball through the ring of the other side, {good} in 100 succeed, 1 times a minute
  a ball rests in the half it came from
  the teacher frees the first in each queue, {back} times a minute
when
  a ball is missed: the thrower waits in the rest queue
finish
  {finish}
"""

CLEAR_YOUR_HALF = """
game Clear Your Half
space
  court 16 m by 9 m, halved across
sides
  north and south, 1 to 20 players each, mirrored
kit
  {balls} soft balls, like a foam ball
set-up
  soft balls in each half
play
  players stay in their half
  players roll a soft ball past the back line of the other side, 1 in 1 succeed, 1 times a minute
when
  a ball crosses the back line: play goes on
finish
  {finish}
"""


def waiting(n: int, out: Fraction, back: Fraction) -> list[Fraction]:
    """The long-run chances of 0, 1, ..., n waiting: each is out at a rate, one comes back at a time."""
    weights = [Fraction(1)]
    for k in range(n):
        weights.append(weights[-1] * (n - k) * out / back)
    return [weight / sum(weights) for weight in weights]


def test_law_gives_the_published_values() -> None:
    law = waiting(5, Fraction(1, 5), Fraction(1))
    assert float(law[0]) == pytest.approx(0.284867821, abs=1e-9)
    assert float(sum(k * p for k, p in enumerate(law))) == pytest.approx(1.424339107, abs=1e-9)
    assert waiting(5, Fraction(1, 4), Fraction(1))[0] == Fraction(128, 643)


@pytest.mark.parametrize(("n", "percent_out", "back"), [(5, 20, 1), (5, 25, 1), (10, 10, 1), (4, 50, 2)])
def test_how_many_wait_in_the_long_run(n: int, percent_out: int, back: int) -> None:
    """After two hours of open-ended play the chances no longer change."""
    finish = "play goes on until the clock stops\n  after 120 min: nobody wins"
    text = WAITING_LINE.format(good=100 - percent_out, back=back, finish=finish)
    played = Played(text, {"north": n, "south": 1})
    column = [place.name for place in played.net.places].index("player/north/-/rest queue")
    wait = markings(played.space, np.arange(played.space.states))[:, column]
    found = np.bincount(wait[played.chain.running], played.until(120).at_bell, minlength=n + 1)
    law = [float(p) for p in waiting(n, Fraction(percent_out, 100), Fraction(back))]
    assert found == pytest.approx(law, abs=1e-9)
    assert float(found @ np.arange(n + 1)) == pytest.approx(sum(k * p for k, p in enumerate(law)), abs=1e-9)


def passage(up: list[Fraction], down: list[Fraction]) -> Fraction:
    """Mean time from 0 to the top of a birth-and-death chain, by h_i = 1 / up_i + (down_i / up_i) h_(i-1)."""
    total = step = Fraction(0)
    for rise, fall in zip(up, down, strict=True):
        step = 1 / rise + (fall / rise) * step
        total += step
    return total


def test_passage_gives_the_published_values() -> None:
    one, two = Fraction(1), Fraction(2)
    assert passage([one] * 3, [Fraction(0), two, two]) == 11
    assert passage([one] * 5, [Fraction(0)] + [two] * 4) == 57


@pytest.mark.parametrize(("n", "percent_out", "back"), [(3, 100, 2), (5, 100, 1), (5, 50, 1), (8, 100, 2)])
def test_until_nobody_is_in(n: int, percent_out: int, back: int) -> None:
    text = WAITING_LINE.format(good=100 - percent_out, back=back, finish="south wins when north has no players in")
    played = Played(text, {"north": n, "south": 1})
    out = Fraction(percent_out, 100)
    mean = passage([(n - k) * out for k in range(n)], [Fraction(back if k else 0) for k in range(n)])
    assert played.absorbed.mean == pytest.approx(float(mean), rel=1e-10)


def test_passage_with_each_back_by_themselves_gives_the_published_values() -> None:
    published = {(3, 1, 2): Fraction(11, 2), (5, 1, 1): Fraction(128, 15), (5, 1, 2): Fraction(569, 20)}
    published[8, 1, 2] = Fraction(125011, 280)
    assert {key: all_out(*key) for key in published} == published


def all_out(n: int, out: int, back: int) -> Fraction:
    """Mean time until all of n wait: each leaves at one rate and comes back at another, by themselves."""
    return passage([Fraction((n - k) * out) for k in range(n)], [Fraction(k * back) for k in range(n)])


@pytest.mark.parametrize(("n", "seconds"), [(3, 30), (5, 60), (5, 30), (8, 30)])
def test_a_task_done_brings_each_back_by_themselves(n: int, seconds: int) -> None:
    """Everybody misses once a minute and then is away for some time: why such rounds hardly end."""
    text = WAITING_LINE.format(good=0, back=1, finish="south wins when north has no players in")
    line = f"whoever waits in the rest queue comes back after {seconds} s"
    played = Played(
        text.replace("the teacher frees the first in each queue, 1 times a minute", line), {"north": n, "south": 1}
    )
    assert played.absorbed.mean == pytest.approx(float(all_out(n, 1, 60 // seconds)), rel=1e-9)


@pytest.mark.parametrize("balls", [4, 6, 8, 10])
def test_clear_your_half(balls: int) -> None:
    """Each ball crosses once a minute; from an even share until either half is empty."""
    finish = "a side wins when it has no soft balls in its half"
    played = Played(CLEAR_YOUR_HALF.format(balls=balls, finish=finish), {"north": balls, "south": balls})
    half = balls // 2
    # By symmetry it is the walk of the lead: at a lead of k each side has half -+ k balls.
    up = [Fraction(balls)] + [Fraction(half - k) for k in range(1, half)]
    down = [Fraction(0)] + [Fraction(half + k) for k in range(1, half)]
    mean = passage(up, down)
    published = {4: Fraction(8), 6: Fraction(37), 8: Fraction(448, 3), 10: Fraction(1753, 3)}[balls]
    assert mean * balls == published  # crossings
    assert played.absorbed.mean == pytest.approx(float(mean), rel=1e-10)
    assert played.steps() == pytest.approx(float(published), rel=1e-10)
    assert played.wins("north") == pytest.approx(0.5, abs=1e-10)

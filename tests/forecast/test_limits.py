"""The sheet's own limits in the forecast: seconds in the hand, guards, one after the other, who goes last."""

from __future__ import annotations

from math import exp, isclose, prod

import attrs
import numpy as np
import pytest

import library
from compose.forecast.rounds.wait_log import WaitLog
from compose.net.attempt import Attempt
from compose.net.net import All, Move, Net, Place, Rate, Rule, Transition
from compose.staging.norms import Ability
from tests.check.worded import worded
from tests.forecast.one_attempt import RULE, THROW, net_of, told


def value(table: str, name: str) -> float:
    return Ability(library.norms()).read(table, name, THROW.age_years).value


def seconds(attempt: Attempt) -> float:
    return 60 / told(attempt).per_minute


def test_a_limit_cuts_off_the_long_aims_only() -> None:
    aim = value("pace aim", THROW.skill)
    limited = attrs.evolve(THROW, hold_limit_s=5.0)
    assert isclose(seconds(THROW) - seconds(limited), aim * exp(-5.0 / aim))


@pytest.mark.parametrize("limit_s", [1.0, 4.0, 9.0])
def test_the_shorter_the_limit_the_more_turns(limit_s: float) -> None:
    shorter, longer = (attrs.evolve(THROW, hold_limit_s=each) for each in (limit_s, limit_s + 1))
    assert seconds(shorter) < seconds(longer) < seconds(THROW)


def test_each_guard_stops_a_share_of_what_is_left() -> None:
    stops = value("players guard", "any skill")
    chances = [told(attrs.evolve(THROW, guards_most=guards)).success for guards in (0, 1, 2)]
    assert isclose(chances[0], told(THROW).success)
    assert isclose(chances[1], chances[0] * (1 - stops)) and isclose(chances[2], chances[1] * (1 - stops))


def test_the_own_chance_of_the_text_has_the_guards_in_it() -> None:
    said = attrs.evolve(THROW, said_chance=0.5, guards_most=3)
    assert told(said).success == 0.5


@pytest.mark.parametrize(("ways", "norms"), [
    (("floor",), ("aim bounced",)), (("wall",), ("aim walled",)), (("floor", "wall"), ("aim bounced", "aim walled")),
])  # fmt: skip
def test_what_came_by_the_floor_or_a_wall_is_taken_off_unless_the_text_says_how_many(
    ways: tuple[str, ...], norms: tuple[str, ...]
) -> None:
    left = prod(1 - value(norm, "any skill") for norm in norms)
    assert isclose(told(attrs.evolve(THROW, ruled_out=ways)).success, left * told(THROW).success)
    caught = [told(attrs.evolve(THROW, catchable=True, catches_ruled_out=each), ("success", "caught", "missed")).caught
              for each in ((), ways)]  # fmt: skip
    assert isclose(caught[1], left * caught[0])
    assert told(attrs.evolve(THROW, ruled_out=ways, said_chance=0.5)).success == 0.5


def test_in_order_takes_longer() -> None:
    longer = seconds(attrs.evolve(THROW, in_order=True)) - seconds(THROW)
    assert isclose(longer, value("pace order", "any skill"))


def test_twice_the_limit_is_broken_half_as_often() -> None:
    held = Attempt("held", "hold", None, "none", hold_limit_s=6.0)
    rates = [told(attrs.evolve(held, hold_limit_s=each), ("always",)).per_minute for each in (6.0, 12.0)]
    assert isclose(rates[0], 2 * rates[1])


def queue_of(last: bool) -> Net:
    rule = Rule("back", RULE.span)
    places = (Place("queue", "player", 3, 0), Place("in", "player", 3, 3))
    moves = (Move(0, 1, 1, rule, (), last),)
    back = Transition(worded("back"), None, True, THROW, "always", Rate(), All(), moves, (rule,))
    return attrs.evolve(net_of(THROW), places=places, transitions=(back,))


@pytest.mark.parametrize(("last", "expected"), [(False, [2.0, 2.0]), (True, [1.0, 3.0])])
def test_who_came_last_goes_first_where_the_rule_says_so(last: bool, expected: list[float]) -> None:
    """One comes at 0 and one at 1 minute; one leaves at 2 and one at 3 minutes."""
    log = WaitLog(queue_of(last), (0,), 1)
    one = np.ones(1, dtype=np.int32)
    for minute, step in ((0.0, one), (1.0, one), (2.0, -one), (3.0, -one)):
        log.now = np.full(1, minute)
        log.carried(None, 0, step)
    assert log.waits(0)[0].tolist() == expected

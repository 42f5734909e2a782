"""Parts of all there are, and how much more one side has than another: the second reader and the net agree."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

SHEET = """
game Row
space
  court 18 m by 9 m, halved across
sides
  north and south, 2 to 14 players each
kit
  1 foam ball
  {number} pins for each side, like a plastic pin
set-up
  1 foam ball in the half of north
  pins on the back line of their side
play
  players roll a foam ball at the pins of the other side{only}
when
  a pin is knocked: the roller's side scores 1 point
finish
  {end}
  after 6 min: more points wins
"""
WINS = "a side wins when"
ENDS = {
    "more than half": f"{WINS} the other side has more than half of its pins down",
    "at least half": f"{WINS} the other side has at least half of its pins down",
    "half, from above": f"{WINS} the other side has half of its pins standing",
    "half, from below": f"{WINS} the other side has half of its pins down",
    "at most half": f"{WINS} the other side has at most half of its pins standing",
    "fewer than half": f"{WINS} the other side has fewer than half of its pins standing",
    "all but one down": f"{WINS} the other side has all but 1 pins down",
    "all but one standing": f"{WINS} the other side has all but 1 pins standing",
    "more": f"{WINS} it has more pins standing than the other side",
    "two more": f"{WINS} it has at least 2 more points than the other side",
    "fewer": "a side loses when it has at least 2 fewer pins standing than the other side",
    "twice as many": f"{WINS} it has twice as many points as the other side",
    "three times as many": f"{WINS} it has 3 times as many pins standing as the other side",
    "than north": "south wins when it has more pins standing than north",
}


@pytest.mark.parametrize("number", [3, 4])
@pytest.mark.parametrize("case", ENDS)
def test_both_readers_come_to_the_same(case: str, number: int) -> None:
    game = game_in(SHEET.format(number=number, only="", end=ENDS[case]))
    mine, its = read_by_both(game, {"north": 2, "south": 2})
    assert its.differs(mine) == ""
    assert any(its.results.values())


def test_a_lead_can_be_asked_for_before_something_is_tried() -> None:
    only = ", only when it has at most half of its pins standing or it has more points than the other side"
    mine, its = read_by_both(game_in(SHEET.format(number=2, only=only, end=ENDS["more"])), {"north": 2, "south": 2})
    assert its.differs(mine) == ""


@pytest.mark.parametrize(
    "end",
    [
        "a side wins when it has more points than a side",
        "a side wins when it has half of its points",
        "a side wins when it has more points than it",
        "3 rounds are played, more rounds wins",
        "1 rounds are played, more points over all wins",
        "best of 3 rounds\n  3 rounds are played, more points over all wins",
    ],
)
def test_what_compares_with_nothing_is_refused(end: str) -> None:
    parsed = parse(SHEET.format(number=3, only="", end=end).lstrip("\n"), "(test)")
    assert parsed.value is not None
    assert any(each.code == "G-sense" for each in resolve(parsed.value.games[0], library.kit_categories()).findings)

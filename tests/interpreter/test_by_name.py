"""The second reader with every name kept: it finds what it finds with one playing for all who stand alike."""

from __future__ import annotations

import pytest

from tests.interpreter.compare import read_by_reader
from tests.interpreter.rounds import Round, reachable
from tests.interpreter.set_up import named
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import game_in, granted
from tests.interpreter.small import players, small

LINE = """
game Line Up
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 3 players each
  role aide: 1 player of north
kit
  2 foam balls
set-up
  1 foam ball in each half
play
  players stay in their half
  players underarm throw a foam ball at the players of the other side
  the teacher frees the first in each queue
when
  a player is hit: that player waits in the rest queue
finish
  a side wins when the other side has no players in
"""


@pytest.mark.parametrize("name", ["sledge-road", "toll-stone", "quarry-row", "heather-raid"])
def test_one_may_play_for_all_who_stand_alike(name: str) -> None:
    sheet = Sheet(small(name).sheet, granted(), players(small(name)))
    assert read_by_reader(sheet, everyone=True) == read_by_reader(sheet)


def test_everybody_has_a_name_and_first_in_is_first_out() -> None:
    sheet = Sheet(game_in(LINE).sheet, granted(), {"north": 2, "south": 2})
    assert named(sheet)["pupils"] == ["north 1", "north 2", "south 1", "south 2"]
    assert named(sheet)["balls"] == ["foam ball 1", "foam ball 2"]
    assert sheet.roles["aide"].sides == ("north",)
    rounds = Round(sheet, everyone=True)
    for state, seen in reachable(rounds).items():
        waiting = [number for number, each in enumerate(state.pupils) if each.side == "north" and each.where != "in"]
        if len(waiting) == 2 and seen.result is None:
            first = min(waiting, key=lambda number: state.pupils[number].turn)
            freed = [move for move in seen.moves if move.told == ("frees",) and move.state.pupils[first].where == "in"]
            assert freed
            assert not any(
                move.told == ("frees",) and move.state.pupils[n].where == "in"
                for n in waiting
                if n != first
                for move in seen.moves
            )

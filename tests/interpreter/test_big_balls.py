"""A big ball that is on no track stands where the set-up puts it: it is towed, pushed and carried, and may be hit."""

from __future__ import annotations

import pytest

from compose.net.told import Tried
from grammar.core.rules import Result
from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

SHEET = """
game Big Ball
space
  court 18 m by 12 m, halved across
  start base: 2 m deep, before each back line
sides
  north and south, 1 to 3 players each, mirrored
kit
  {thing}
  2 foam balls
set-up
  {kind} {where}
  1 foam ball in each half
play
  players stay in their half
  {play}
when
  {when}: the {doer}'s side scores 1 point
finish
  the first side to 2 points wins
"""
MOVED = ("tow", "push", "carry")
THINGS = {"gym ball": "1 gym ball", "log": "1 log, like a cone"}
PLAYERS = {"north": 2, "south": 1}


def sheet(kind: str, play: str, when: str, doer: str, where: str = "in the middle") -> str:
    return SHEET.format(kind=kind, thing=THINGS[kind], play=play, when=when, doer=doer, where=where)


def moved(kind: str, skill: str, way: str) -> str:
    doer = {"tow": "tower", "push": "pusher", "carry": "carrier"}[skill]
    return sheet(kind, f"players {skill} a {kind} {way}", f"a {kind} arrives", "runner" if skill == "tow" else doer)


@pytest.mark.parametrize("skill", MOVED)
@pytest.mark.parametrize("way", ["from wall to wall", "from their start base to the start base of the other side"])
def test_it_arrives_as_any_other_thing_does(skill: str, way: str) -> None:
    game = game_in(moved("gym ball", skill, way))
    agree(game, PLAYERS)
    arrivals = [
        {(move.told.moment.by, move.outcome) for move in net_in(each, PLAYERS).transitions
         if isinstance(move.told, Tried)
         and move.told.moment.result is Result.ARRIVED}
        for each in (game, game_in(moved("log", skill, way)))
    ]  # fmt: skip
    assert arrivals[0] == arrivals[1] != set()


@pytest.mark.parametrize("kind", THINGS)
def test_it_is_hit_where_it_stands(kind: str) -> None:
    play = f"players overarm throw a foam ball at the {kind}"
    agree(game_in(sheet(kind, play, f"a {kind} is knocked", "thrower")), PLAYERS)

"""Where each plays for themselves: who is meant, whose points, who has won; and what holds without a switch."""

from __future__ import annotations

import pytest

from grammar.core.reading.from_game import core_of
from grammar.core.rules import Go, Person
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Hail
  switch older ones, {usually}
space
  court 18 m by 12 m, in one piece
  side bench: along a side line
sides
  {sides}
  {lives}
kit
  2 foam balls
set-up
  foam balls on the court
play
  players overarm throw a foam ball at {whom}
  {play}
when
  a player is hit: {hit}
  {when}
finish
  {finish}
"""
OUT = "that player goes to the side bench"
USUAL = {
    "usually": "usually off",
    "sides": "throwers, 2 to 6 players, each for themselves",
    "lives": "",
    "whom": "players",
    "play": "with older ones, attempts succeed 50 % as often",
    "hit": OUT,
    "when": "",
    "finish": "after 3 min: nobody wins",
}
BENCH = {"play": USUAL["play"] + "\n  players on the side bench overarm throw a foam ball at players"}
TWO = {"sides": "north and south, 1 to 6 players each, mirrored", "whom": "the players of the other side"}
LIVES = {"lives": "each player has 2 lives", "hit": "that player loses a life"}
POINTS = {"finish": "after 3 min: the player with the most points wins"}
CATCH = "a ball is caught: the thrower goes to the side bench"
WAYS = {
    "a side called by what it does": {"hit": "the thrower goes to the side bench"},
    "back with a hit from the bench": BENCH | {"when": "a player is hit from the side bench: the thrower returns"},
    "who is hit loses a point": POINTS | {"hit": "that player loses 1 point and the thrower's side scores 2 points"},
    "who is hit scores": POINTS | {"hit": "that player scores 1 point"},
    "who arrives scores": POINTS
    | {"play": f"{USUAL['play']}\n  throwers run from wall to wall", "when": "a thrower arrives: it scores 1 point"},
    "lives count at the end": POINTS | LIVES | {"finish": f"at the end lives score 1 point\n  {POINTS['finish']}"},
    "lives of sides count at the end": TWO
    | LIVES
    | {
        "finish": "at the end lives score 2 points\n  after 3 min: more points wins, else a draw",
        "hit": "that player loses a life and that player's side loses 1 point",
    },
    "those who are left": {"finish": "the round ends when there are at most 2 players in, those who are left win"},
    "so many left": {"finish": "the round ends when there are 2 players in, those who are left win"},
    "left at the bell": {"finish": "after 3 min: those who are left win"},
    "while a switch is off": {"when": f"not with older ones, {CATCH}"},
    "not while it is on": {"when": f"not with older ones, {CATCH}", "usually": "usually on"},
    "one or the other": {"when": f"not with older ones, {CATCH}\n  with older ones, a ball is caught: play goes on"},
    "a finish without it": {
        "finish": "not with older ones, the round ends when there are 2 players in, those who are left win\n"
        "  with older ones, after 3 min: nobody wins"
    },
}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("players", [2, 4])
def test_both_readers_agree(way: str, players: int) -> None:
    game = game_in(GAME.format(**USUAL | WAYS[way]))
    agree(game, {side.name: players for side in game.sides})


def test_the_thrower_is_who_threw_though_all_are_called_so() -> None:
    """Counts do not tell who of two goes, so the core is asked."""
    for said, who in (("the thrower", Person.ACTOR), ("that player", Person.OBJECT)):
        core = core_of(game_in(GAME.format(**USUAL | {"hit": f"{said} goes to the side bench"}))).value
        assert core is not None
        going = [each.who for rule in core.play.rules for each in rule.effects if isinstance(each, Go)]
        assert going == [who]


REFUSED = {
    "sides have no players left over": (TWO | {"finish": "after 3 min: those who are left win"}, "a side wins"),
    "things of nobody": (POINTS | {"finish": f"at the end cones score 1 point\n  {POINTS['finish']}"}, "no side has"),
    "lives and things in one line": (
        TWO | LIVES | {"finish": "at the end lives score 2 and cones 1 points\n  after 3 min: more points wins"},
        "line of their own",
    ),
    "lives of nobody": (POINTS | {"finish": f"at the end lives score 1 point\n  {POINTS['finish']}"}, "lives"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_nobody_has_is_refused(case: str) -> None:
    said, why = REFUSED[case]
    text = GAME.format(**USUAL | said).replace("2 foam balls\n", "2 foam balls\n  4 cones\n", 1)
    text = text.replace("foam balls on the court\n", "foam balls on the court\n  cones on the court\n", 1)
    sheet = parse(text, "(test)").value
    assert sheet is not None
    found = resolve(sheet.games[0], kit_categories())
    assert any(why in each.title for each in found.findings), [each.title for each in found.findings]

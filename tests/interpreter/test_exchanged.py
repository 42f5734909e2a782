"""Two who play change places: each takes the side and the task of the other; both readers agree."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

EXCHANGED = """
game Exchanged
space
  court 18 m by 9 m, {court}
  far bench: behind each back line
sides
  dragons and knights, 1 to 14 players each
  {sides}
kit
  1 foam ball
  1 egg for dragons, like a bucket
set-up
  egg in the middle
  1 foam ball {ball}
play
  {play}
when
  {when}
finish
  {finish}
"""
USUAL = {
    "court": "halved across",
    "sides": "role guard: 1 player of dragons",
    "ball": "in the half of knights",
    "play": "knights roll a foam ball at the egg",
    "when": "an egg is knocked: it stands up again and the roller changes places with its keeper",
    "finish": "dragons win when knights have no players in",
}
CASES = {
    "who knocks the egg takes the guard's part, or another dragon's": {},
    "with lives": {
        "sides": "each dragon has 2 lives\n  each knight has 3 lives",
        "play": "players roll a foam ball at the players of the other side",
        "when": "a player is hit: that player loses a life\n"
        "  a ball is caught: the roller changes places with the catcher",
    },
    "who is touched with the tagger": {
        "court": "in one piece",
        "ball": "on the court",
        "play": "guards touch knights\n  knights roll a foam ball at the egg",
        "when": "an egg is knocked: it stays down\n"
        "  a player is touched: that player changes places with the tagger\n  a ball is missed: the roller is out",
    },
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    game = game_in(EXCHANGED.format(**(USUAL | CASES[case])))
    players = {"dragons": 2, "knights": 2}
    mine, its = read_by_both(game, players)
    assert its.differs(mine) == ""


@pytest.mark.parametrize(
    "when",
    [
        "a ball is missed: the roller changes places with the catcher",
        "an egg is knocked: the roller changes places with that player",
        "a player is hit: that player changes places with that player",
        "a pass is caught: the passer changes places with the catcher",
    ],
)
def test_who_is_not_there_changes_with_nobody(when: str) -> None:
    play = f"{USUAL['play']}\n  knights roll a foam ball at dragons\n  knights pass a foam ball to a team-mate"
    parsed = parse(EXCHANGED.format(**(USUAL | {"play": play, "when": when})).lstrip("\n"), "(test)")
    assert parsed.value is not None
    outcome = resolve(parsed.value.games[0], library.kit_categories())
    assert outcome.value is None and outcome.findings

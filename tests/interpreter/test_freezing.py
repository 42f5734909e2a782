"""Players who freeze where they are: the second reader and the net agree, and what means nothing is refused."""

from __future__ import annotations

import pytest

import library
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

PLAYERS = {"north": 3, "south": 2}
FROST = """
game Frost
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 1 to 14 players each{mirrored}
  {sides}
kit
  2 foam balls
set-up
  1 foam ball in each half
play
  players roll a foam ball at the players of the other side
  {play}
when
  a player is hit: that player freezes
  {when}
finish
  {finish}
"""
USUAL = {
    "mirrored": "",
    "sides": "role scout: 0 to 1 players of each side",
    "play": "players free frozen players of their side",
    "when": "",
    "finish": "a side wins when the other side has no players in",
}
CASES = {
    "freed by team-mates": {},
    "freed by two": {"play": "2 players free a frozen player"},
    "freed by scouts": {"sides": "role scout: 1 to 2 players of each side", "play": "scouts free frozen players"},
    "the teacher frees one of north": {"play": "the teacher frees a frozen player of north"},
    "all at once": {"play": "players free all frozen players of their side"},
    "by themselves": {"play": "whoever is frozen is free after 30 s"},
    "by a pass": {
        "play": "players pass a foam ball to a frozen team-mate",
        "when": "a pass is caught by a frozen player: that player is free",
    },
    "by a pass, and who passed freezes": {
        "sides": "role scout: 1 to 2 players of each side",
        "play": "players pass a foam ball to a frozen team-mate",
        "when": "a pass is caught by a frozen player: the catcher is free and the passer freezes",
    },
    "a catch frees one of the catcher's": {"when": "a ball is caught: a frozen player is free"},
    "a catch frees all of the thrower's": {
        "when": "a ball is caught: all frozen players of the thrower's side are free",
    },
    "whoever throws freezes, too": {"when": "a ball is caught: the thrower freezes"},
    "by the clock": {"when": "after 1 min: all frozen players are free", "finish": "after 2 min: more players in wins"},
    "frozen ones go to wait": {
        "play": "the teacher frees the first in each queue",
        "when": "a ball is caught: a frozen player of the other side waits in the rest queue",
    },
    "as soon as so many are frozen": {"when": "north has 2 frozen players: all frozen players of north are free"},
    "so many frozen lose": {"finish": "a side loses when it has 2 frozen players"},
    "none frozen": {"finish": "after 2 min: fewer frozen players wins, else a draw"},
    "all frozen": {"finish": "north wins when the other side has all frozen players"},
}


@pytest.mark.parametrize("case", CASES)
def test_both_readers_come_to_the_same(case: str) -> None:
    game = game_in(FROST.format(**(USUAL | CASES[case])))
    mine, its = read_by_both(game, PLAYERS)
    assert its.differs(mine) == ""
    assert any("frozen" in key for state in its.results for key, _ in state)


REFUSED = {
    "aimed at": {"play": "players roll a foam ball at the frozen players of the other side"},
    "touched": {"play": "players touch frozen players of the other side"},
    "freed by the others": {"play": "players free frozen players of the other side"},
    "passed to the others": {"play": "players pass a foam ball to a frozen player of the other side"},
    "who waits freezes": {"when": "a ball is caught: the first in the catcher's queue freezes"},
    "how many": {"when": "a ball is caught: the frozen players are free"},
    "where they froze": {"finish": "a side wins when it has 2 frozen players in the rest queue"},
    "caught by who froze, and no pass": {
        "play": "players pass a foam ball to a frozen team-mate",
        "when": "a ball is caught by a frozen player: that player is free",
    },
    "caught where they wait, and no pass": {
        "play": "players pass a foam ball to a team-mate in the rest queue",
        "when": "a throw is caught in the rest queue: the catcher is free",
    },
    "fouling": {"when": "a frozen player fouls: the other side scores 1 point"},
    "caught in a player": {
        "play": "players pass a foam ball to a frozen team-mate",
        "when": "a pass is caught in a frozen player: the catcher is free",
    },
    "caught by some role": {
        "sides": "role scout: 1 to 2 players of each side",
        "play": "players pass a foam ball to a frozen team-mate",
        "when": "a pass is caught by a frozen scout: the catcher is free",
    },
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_means_nothing_is_refused(case: str) -> None:
    text = FROST.format(**(USUAL | REFUSED[case]))
    parsed = parse(text.lstrip("\n"), "(test)")
    resolved = parsed if parsed.value is None else resolve(parsed.value.games[0], library.kit_categories())
    findings = resolved.findings
    assert findings and all(finding.hint for finding in findings)

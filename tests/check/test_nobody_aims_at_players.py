"""Lines about hits and touches of players where nobody tries any: the cause is told, not what follows from it."""

from __future__ import annotations

import pytest

from compose.net.from_game import net_of
from grammar.finding import Finding, Severity
from tests.check.cases import told
from tests.interpreter.sheets import game_in, granted

SHEET = """
game Keepers
space
  court 18 m by 9 m, halved across
  calm bench: along a side line
sides
  north and south, 2 to 8 players each, mirrored
kit
  2 foam balls
  2 skittles for each side, like a plastic pin
set-up
  skittles on the back line of their side
  1 foam ball in each half
play
  players stay in their half
  players overarm throw a foam ball at the {aim} of the other side
when
  {what}: {follows}
finish
  a side wins when the other side has no skittles standing
  after 6 min: more skittles standing wins, else a draw
"""
THROWN, TOUCHED = "Nobody aims at players, and the check reckons with no hit by accident.", "Nobody touches players."
FOLLOWS = ("{who} waits in the calm bench for 30 s", "{who} waits in the calm bench", "{who}'s side loses 1 point")


def idle(aim: str, what: str, follows: str) -> list[Finding]:
    """What is told to be without effect of the line about players."""
    text = SHEET.format(aim=aim, what=what, follows=follows)
    net = net_of(game_in(text), granted(), {"north": 2, "south": 2}).value
    assert net is not None
    return [each for each in told(net) if each.code == "C-idle" and what in each.title]


@pytest.mark.parametrize("follows", FOLLOWS)
@pytest.mark.parametrize(("what", "who", "why"), [
    ("a player is hit above the shoulder", "the thrower", THROWN),
    ("a player is hit", "the thrower", THROWN),
    ("a player is touched", "the tagger", TOUCHED),
])  # fmt: skip
def test_whatever_would_follow_the_cause_is_that_nobody_tries_it(what: str, who: str, why: str, follows: str) -> None:
    (found,) = idle("skittles", what, follows.format(who=who))
    assert found.hint.startswith(why), found.hint
    if "shoulder" in what:  # it forbids what nobody means to do
        assert found.severity is Severity.NOTE and "no harm" in found.hint


def test_where_players_are_aimed_at_it_is_not_said() -> None:
    found = idle("players", "a player is hit above the shoulder", FOLLOWS[0].format(who="the thrower"))
    assert not any(THROWN in each.hint for each in found)

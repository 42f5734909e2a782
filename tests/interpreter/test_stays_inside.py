"""A ball that stays in what it went into: both readers keep it there, whosever that is, and nobody takes it out."""

from __future__ import annotations

import pytest

from compose.check import StateSpace, explore
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.compare import read_by_net
from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

GAME = """
game Stays
space
  court 18 m by 9 m, {court}
sides
  north and south, 2 to 6 players each, mirrored
kit
  3 soft balls, like a foam ball
  1 pot for each side, like a bucket
  1 tub, like a bucket
set-up
  {balls}
  pots on the back line of their side
  tub in the middle
play
  players underarm throw a soft ball into the pots{more}
when
  {when}
finish
  {finish}
"""
HALVES = {
    "court": "halved across",
    "balls": "2 soft balls in the half of north\n  1 soft ball in the half of south",
    "more": "",
    "finish": "the first side to 3 points wins",
}
POINT = "the thrower's side scores 1 point"
WAYS = {
    "each side's own": {"when": f"a ball goes into a pot: {POINT} and the ball stays there"},
    "of all": {"more": " or the tub", "when": f"a ball goes into a tub: {POINT} and the ball stays there"},
    "of some and of all": {
        "more": " or the tub",
        "when": "a ball goes into a tub: the ball stays there\n"
        f"  a ball goes into a pot: {POINT} and the ball stays there",
    },
    "into any": {"more": " or the tub", "when": f"a ball goes into a target: {POINT} and the ball stays there"},
    "undivided": {
        "court": "in one piece",
        "balls": "soft balls in the middle",
        "when": f"a ball goes into a pot: {POINT} and the ball stays there",
    },
    "whose ball it is": {
        "court": "in one piece",
        "balls": "each side begins with 1 soft ball\n  1 soft ball in the middle",
        "when": f"a ball goes into a pot: {POINT} and the ball stays there",
    },
    "until none is left": {
        "when": f"a ball goes into a pot: {POINT} and the ball stays there",
        "finish": "the round ends when each side has no soft balls in its half, more points wins",
    },
    "only the first time": {
        "when": f"a ball goes into a pot: {POINT}\n  the first time, a ball goes into a pot: the ball stays there"
    },
    "one side's line": {"when": f"a ball goes into a pot of north: {POINT} and the ball stays there"},
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_keep_it_there(way: str) -> None:
    agree(game_in(GAME.format(**HALVES | WAYS[way])), {"north": 2, "south": 2})


def test_without_the_line_nothing_stays_there() -> None:
    for more, stays in ((" and the ball stays there", True), ("", False)):
        game = game_in(GAME.format(**HALVES | {"when": f"a ball goes into a pot: {POINT}{more}"}))
        space = explore(net_in(game, {"north": 2, "south": 2}))
        assert isinstance(space, StateSpace)
        its = read_by_net(space)
        assert any("inside" in key for state in its.results for key, _ in state) is stays


@pytest.mark.parametrize(
    "line",
    [
        "a ball is missed: the ball stays there",
        "a ball goes through a gate: the ball stays there",
        "a ball crosses the back line: the ball stays there",
        "a ball goes into a pot: the tub stays there",
    ],
)
def test_what_went_into_nothing_stays_nowhere(line: str) -> None:
    text = GAME.format(**HALVES | {"when": line, "more": ", past the back line of the other side or through the gates"})
    text = text.replace("set-up", "  1 gate for each side, like a hoop\nset-up").replace("pots on", "gates and pots on")
    text = text.replace(", past the back line of the other side or through", " or past the back line or through")
    rules = parse(text)
    assert rules.value is not None, rules.findings
    assert "G-sense" in [each.code for each in resolve(rules.value.games[0], kit_categories()).findings]

"""Runs there and back, one of a side after the other: the second reader and the net agree how often a side has run."""

from __future__ import annotations

import pytest

from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Lane Relay
space
  court 18 m by 9 m, in one piece
  start base: before a back line
  far base: before the other back line
sides
  north and south, 1 to 6 players each, mirrored
play
  players run from the start base to the far base and back{detail}
{when}
finish
  {finish}
"""
POINT = "when\n  a runner arrives: the runner's side scores 1 point"
WAYS = {
    "so many runs": {},
    "all at once": {"detail": ""},
    "two at a time": {"detail": ", only 2 players at a time"},
    "once with each": {"finish": "a side wins when it has run once with each player"},
    "twice with each": {"finish": "a side wins when it has run 2 times with each player"},
    "points for it": {"when": POINT, "finish": "a side wins when it has run 3 times and it has at least 2 points"},
    "a count that becomes so": {
        "when": "when\n  a side has run 2 times: it scores 1 point", "finish": "a side wins when it has 1 point"
    },
    "anew": {
        "when": "when\n  a side has run 2 times: everything starts again and it scores 1 point",
        "finish": "a side wins when it has 2 points",
    },
    "both ways": {"finish": "a side wins when it has run 2 times and the other side has run once"},
    "the other side": {"finish": "a side loses when the other side has run 2 times"},
    "only once somebody has": {
        "detail": ", only 1 player at a time, only when the other side has run once", "when": "",
        "finish": "north wins when it has run 3 times",
    },
}  # fmt: skip
USUAL = {"detail": ", only 1 player at a time", "when": "", "finish": "a side wins when it has run 4 times"}


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("players", [(1, 1), (2, 3)])
def test_both_readers_agree(way: str, players: tuple[int, int]) -> None:
    game = game_in(GAME.format(**USUAL | WAYS[way]))
    agree(game, dict(zip(("north", "south"), players, strict=True)))


REFUSED = {
    "who brings something comes back": ("run from", "carry a log from", "leaves it there"),
    "nobody runs": ("players run from the start base to the far base and back{detail}", "players stay on the court",
                    "who runs"),
    "not once": ("{finish}", "a side wins when it has run 0 times", "Nobody has to run"),
    "no first end": ("before a back line", "across the middle", "which is the one"),
    "each for themselves": (
        "north and south, 1 to 6 players each, mirrored", "hares, 2 to 6 players, each for themselves",
        "nobody runs for a side",
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", REFUSED)
def test_what_is_no_relay_is_refused(case: str) -> None:
    old, new, why = REFUSED[case]
    assert old in GAME
    text = GAME.replace(old, new).format(**USUAL)
    sheet = parse(
        text.replace("play\n", "kit\n  2 logs, like a cone\nset-up\n  logs in the middle\nplay\n"), "(test)"
    ).value
    assert sheet is not None
    found = resolve(sheet.games[0], kit_categories())
    assert any(why in each.title for each in found.findings), [each.title for each in found.findings]

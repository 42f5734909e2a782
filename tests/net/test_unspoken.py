"""A place, or a thing in the corners, of which no rule speaks is told; one of which any line says something is not."""

from __future__ import annotations

import pytest

from compose.net.lower.unspoken import unspoken
from grammar.core.reading.from_game import core_of
from grammar.parse import parse
from grammar.resolve import resolve
from library import kit_categories

GAME = """game Four Corners

space
  court 18 m by 9 m, halved across
  mat base: 1 m deep, in each corner{rule}

sides
  north and south, 6 to 14 players each, mirrored

kit
  12 foam balls
  3 cones for each side
  4 posts, like a cone

set-up
  cones on the back line of their side
  foam balls in each half
  posts {where}

play
  players stay in their half
  players roll a foam ball at the cones{posts} of the other side
  {more}

when
  a player fouls: {then}

finish
  a side wins when the other side has no cones standing
  after 6 min: more cones standing wins, else a draw
"""
WRONG = {"rule": "", "where": "in each corner", "posts": "", "more": "", "then": "the other side has the ball"}
BALL = "a foam ball goes to the other side"


def told(**more: str) -> list[tuple[int, str]]:
    text = GAME.format(**(WRONG | {"then": BALL} | more))
    rules = parse(text).value
    assert rules is not None
    game = resolve(rules.games[0], kit_categories())
    assert game.value is not None, [each.title for each in game.findings]
    core = core_of(game.value).value
    assert core is not None
    return [(each.place.line, each.title) for each, _ in unspoken(core, "N-unread")]


def test_corners_that_nothing_uses_are_told_with_their_lines() -> None:
    found = told()
    assert {line for line, _ in found} == {5, 18}
    assert any("mat base" in name for _, name in found) and any("post" in name for _, name in found)


@pytest.mark.parametrize(
    "sound",
    [
        {"rule": ", nobody enters there"},
        {"rule": ", at most 2 players there"},
        {"then": "that player waits in the mat base for 30 s"},
        {"more": '"Whoever is tired rests on a mat base."'},
        {"more": "players take a log from the middle to their mat base", "posts": ""},
    ],
)
def test_a_place_of_which_a_line_speaks_is_not(sound: dict[str, str]) -> None:
    text = "4 posts, like a cone\n  9 logs, like a box" if "log" in sound.get("more", "") else "4 posts, like a cone"
    lines = GAME.replace("4 posts, like a cone", text)
    lines = lines.replace("posts {where}", "posts {where}\n  logs in the middle") if "logs" in text else lines
    rules = parse(lines.format(**(WRONG | {"then": BALL} | sound))).value
    assert rules is not None
    game = resolve(rules.games[0], kit_categories())
    assert game.value is not None, [each.title for each in game.findings]
    core = core_of(game.value).value
    assert core is not None
    assert not any("mat base" in each.title for each, _ in unspoken(core, "N-unread"))


@pytest.mark.parametrize("sound", [{"where": "on the middle line"}, {"more": "players roll a foam ball at the posts"}])
def test_things_elsewhere_or_aimed_at_are_not(sound: dict[str, str]) -> None:
    assert [line for line, _ in told(**sound)] == [5]

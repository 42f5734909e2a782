"""How many of a side run at once is said of what they run for, where that is one thing alone."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """
game Banks
space
  court 16 m by 16 m, in one piece
  bank base: 1 m deep, before each back line
sides
  north and south, 6 to 12 players each, mirrored
kit
  24 beanbags
play
  {lines}
"""
TAKE = "players take a beanbag from the middle to their bank base"
STEAL = "players take a beanbag from the bank base of the other side to their bank base"


def _play(*lines: str) -> list[str] | None:
    rules = parse(SHEET.format(lines="\n  ".join(lines))).value
    return [line.sentence.words() for line in rules.games[0].lines("play")] if rules else None


@pytest.mark.parametrize(
    ("said", "more"),
    [
        ("one player of each team runs at a time", "only 1 player at a time"),
        ("only two players at a time", "only 2 players at a time"),
        ("at most one of each side at once", "only 1 player at a time"),
    ],
)
def test_it_stands_with_the_one_line_that_it_can_be_said_of(said: str, more: str) -> None:
    assert _play("players stay on the court", said, TAKE) == ["players stay on the court", f"{TAKE}, {more}"]


def test_of_two_lines_it_is_not_told_which_is_meant() -> None:
    assert _play(TAKE, STEAL, "one player of each side runs at a time") is None


def test_one_at_a_time_may_be_said_of_things() -> None:
    assert _play(TAKE, "one at a time") is None

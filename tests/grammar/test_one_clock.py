"""How long a round lasts and who has won then may stand in two lines: they are read as one clock."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """
game Towers
sides
  north and south, 6 to 12 players each, mirrored
kit
  3 towers for each side, like a box
finish
  {}
  {}
"""
READ = [
    ("the game lasts 6 minutes", "the side with more towers standing wins", "after 6 min: more towers standing wins"),
    ("most points wins", "we play 8 minutes", "after 8 min: more points wins"),
    ("a round ends after five minutes", "at the end more points wins, else a draw",
     "after 5 min: more points wins, else a draw"),
    ("play for 90 seconds", "when time is up, the side with the most points wins", "after 90 s: more points wins"),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other", "clock"), READ)
def test_two_lines_are_one_clock(one: str, other: str, clock: str) -> None:
    for lines in ((one, other), (other, one)):
        outcome = parse(SHEET.format(*lines))
        assert outcome.value is not None, [str(each.title) for each in outcome.findings]
        assert [line.sentence.words() for line in outcome.value.games[0].lines("finish")] == [clock]


def test_points_of_both_halves_decide_without_a_line() -> None:
    outcome = parse(SHEET.format("two halves of five minutes", "the team with more points in all wins"))
    assert outcome.value is not None
    assert [line.sentence.words() for line in outcome.value.games[0].lines("finish")] == ["two halves of 5 min"]


def test_a_slip_in_one_of_the_two_lines_is_one_mistake() -> None:
    outcome = parse(SHEET.format("the game lasts 6 minuts", "the side with more towers standing wins"))
    assert [str(each.title) for each in outcome.findings] == ["`minuts` is written `minutes`."]


@pytest.mark.parametrize("lines", [
    ("the game lasts 6 minutes", "the game lasts 8 minutes"),
    ("the game lasts 6 minutes", "a side wins when the other side has no towers standing"),
    ("the side with more towers standing wins", "a side wins when the other side has no towers standing"),
])  # fmt: skip
def test_what_is_no_clock_is_refused(lines: tuple[str, str]) -> None:
    outcome = parse(SHEET.format(*lines))
    assert outcome.value is None and outcome.findings

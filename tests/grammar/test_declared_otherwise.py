"""What a line declares in other words than those of the language has the name that it has in those."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """
game Two Ways
space
  court 18 m by 9 m, halved across
  goal zone: 3 m deep, before each back line
sides
  {sides}
  {role}
kit
  6 foam balls
  {kit}
set-up
  towers in the goal zone
  each side begins with 3 foam balls
play
  players stay in their half
  players overarm throw a foam ball at the towers of the other side
  guards block shots at the towers of their side with the hands
when
  a tower is knocked: it stays down
finish
  a side wins when the other side has no towers standing
  after 6 min: more towers standing wins, else a draw
"""
USUAL = {
    "sides": "red and blue, 6 to 14 players each",
    "role": "role guard: 2 players of each side",
    "kit": "3 towers for each side, like a box",
}
OTHERWISE = [
    ("kit", "3 towers per team, like a box"),
    ("kit", "3 towers per side, like a box"),
    ("sides", "red against blue, 6 to 14 players each"),
    ("sides", "red vs blue, 6 to 14 players a side"),
    ("role", "2 guards per team"),
    ("role", "each team has two guards"),
    ("role", "there are 2 guards in each team"),
]


def lines(**said: str) -> list[str]:
    text = "\n".join(line for line in SHEET.format(**USUAL | said).splitlines() if line.strip())
    outcome = parse(f"{text}\n")
    assert outcome.value is not None, [str(finding.title) for finding in outcome.findings]
    return [line.sentence.words() for part in outcome.value.games[0].sections for line in part.lines]


@pytest.mark.parametrize(("part", "said"), OTHERWISE)
def test_it_is_the_same_sheet(part: str, said: str) -> None:
    assert lines(**{part: said}) == lines()


def test_several_tasks_in_one_line() -> None:
    text = "game Chase\nsides\n  20 runners and 4 taggers\nplay\n  taggers chase the runners\n"
    outcome = parse(text)
    assert outcome.value is not None
    sides, play = outcome.value.games[0].sections
    assert [line.sentence.words() for line in sides.lines] == ["runners, 20 players", "taggers, 4 players"]
    assert [line.sentence.words() for line in play.lines] == ["taggers touch the runners"]

"""What a rule of play says of a place is read where the place is laid out."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """
game Camps
space
  court 18 m by 10 m, halved across
  camp base: 2 m deep, before each back line
  reed strip: 1 m deep, before each back line
sides
  north and south, 6 to 12 players each, mirrored
kit
  4 logs for each side, like a box
play
  {play}
  {rule}
"""
CHASE = "players touch players of the other side who carry a log"
THROW = "players stay in their half"
SAID = [
    (CHASE, "nobody can be tagged in their own camp",
     "camp base: 2 m deep, before each back line, nobody is touched there"),
    (CHASE, "players are safe in their camp base",
     "camp base: 2 m deep, before each back line, nobody is touched there"),
    (CHASE, "no tagging in the camp", "camp base: 2 m deep, before each back line, nobody is touched there"),
    (THROW, "players are safe in the reed strip", "reed strip: 1 m deep, before each back line, nobody is hit there"),
    (CHASE, "nobody may stand in their own camp", "camp base: 2 m deep, before each back line, nobody guards there"),
    (CHASE, "no guarding in the camp base", "camp base: 2 m deep, before each back line, nobody guards there"),
    (CHASE, "players may not enter the reed strip", "reed strip: 1 m deep, before each back line, nobody enters there"),
    (CHASE, "at most two players fit in the camp, for at most ten seconds",
     "camp base: 2 m deep, before each back line, at most 2 players there, at most 10 s there"),
    (CHASE, "nobody may stay in the camp longer than 10 seconds\n  no tagging in the camp",
     "camp base: 2 m deep, before each back line, nobody is touched there, at most 10 s there"),
    (THROW, "only north players may enter the reed strip",
     "reed strip: 1 m deep, before each back line, only north players enter there"),
]  # fmt: skip


@pytest.mark.parametrize(("play", "rule", "area"), SAID)
def test_it_stands_with_the_place(play: str, rule: str, area: str) -> None:
    outcome = parse(SHEET.format(play=play, rule=rule))
    assert outcome.value is not None, [str(each.title) for each in outcome.findings]
    game = outcome.value.games[0]
    assert area in [line.sentence.words() for line in game.lines("space")]
    assert [line.sentence.words() for line in game.lines("play")] == [play]


# The last: for how long is read of a place where somebody is safe alone, and is told at the line that says it.
@pytest.mark.parametrize(
    "rule", ["nobody may stand in the swamp", "nobody sings in their camp", "nobody may stay in the camp more than 9 s"]
)
def test_what_is_said_of_no_place_is_refused(rule: str) -> None:
    outcome = parse(SHEET.format(play=CHASE, rule=rule))
    assert outcome.value is None and outcome.findings

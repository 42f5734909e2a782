"""A catch out of the air and a hit below the shoulder: what of the others does not count stands under play."""

from __future__ import annotations

import pytest

from grammar.parse import parse

SHEET = """
game Eggs
space
  court 18 m by 9 m, halved across
  moss queue: beside each half
sides
  north and south, 6 to 12 players each, mirrored
kit
  4 foam balls
play
  players overarm throw a foam ball at the players of the other side
  {play}
when
  {when}
"""
HIT = "a player is hit: that player goes to the moss queue"
CAUGHT = "a ball is caught: the thrower goes to the moss queue"
LOW, BOUNCED = "a hit above the shoulder does not count", "a hit after a bounce does not count"
CATCH = "a catch after a bounce does not count"
NOTHING = "a ball is held at most 10 s"
SAID = [
    ("a player is hit below the shoulders: that player goes to the moss queue", NOTHING, HIT, [LOW]),
    ("if a ball hits you below the shoulders before it touches the floor, you go to the moss queue", NOTHING, HIT,
     [BOUNCED, LOW]),
    ("a ball is caught straight out of the air: the thrower goes to the moss queue", NOTHING, CAUGHT, [CATCH]),
    ("if you catch the ball in the air, the thrower goes to the moss queue", CATCH, CAUGHT, []),
    (HIT, LOW, HIT, []),
]  # fmt: skip


@pytest.mark.parametrize(("when", "play", "event", "rules"), SAID)
def test_what_does_not_count_stands_under_play(when: str, play: str, event: str, rules: list[str]) -> None:
    outcome = parse(SHEET.format(when=when, play=play))
    assert outcome.value is not None, [str(each.title) for each in outcome.findings]
    game = outcome.value.games[0]
    assert [line.sentence.words() for line in game.lines("when")] == [event]
    assert [line.sentence.words() for line in game.lines("play")][2:] == rules


@pytest.mark.parametrize("when", [
    "a player catches a ball out of the air below the shoulders: the thrower goes to the swamp",
    "a lantern is knocked out of the air: it stays down",
])  # fmt: skip
def test_what_else_is_wrong_stays_so(when: str) -> None:
    outcome = parse(SHEET.format(when=when, play=NOTHING))
    assert outcome.value is None and outcome.findings

"""Nothing that a line lets happen after a time is left to a time at which the clock has ended the round."""

from __future__ import annotations

import pytest
from proofreading import judge_of

SHEET = """
game Waits
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 6 to 14 players each, mirrored
kit
  6 foam balls
set-up
  3 foam balls in each half
play
  players stay in their half
  players underarm throw a foam ball at the players of the other side
  {play}
when
  a player is hit: {hit}
  {when}
finish
  a side wins when the other side has no players in
  {clock}
"""
CLOCK = "after 6 min: more players in wins, else a draw"
NO_CLOCK = "a side wins when the other side has all but 2 players in the rest queue"
PLAY, WHEN = '"Throws go below the shoulder."', '"Whoever is hit raises a hand."'
USUAL = {"play": PLAY, "hit": "that player waits in the rest queue", "when": WHEN}
WAITS = (
    {"play": "whoever waits in the rest queue comes back after {time}"},
    {"play": "whoever is frozen is free after {time}", "hit": "that player freezes"},
    {"play": "a ball is held at most {time}"},
    {"hit": "that player waits in the rest queue for {time}"},
    {"when": "a player fouls: that player waits in the rest queue for {time}"},
    {"when": "a ball is held longer than {time}: the other side has the ball"},
    {"when": "everyone holds a ball for {time}: all in each rest queue return"},
    {"when": "every {time}: all in each rest queue return"},
)
every_wait = pytest.mark.parametrize("lines", WAITS, ids=lambda lines: " ".join(lines.values()))


def refused(lines: dict[str, str], time: str, clock: str = CLOCK) -> list[tuple[str, str]]:
    """What is a mistake of the sheet with these lines."""
    said = {where: line.format(time=time) for where, line in (USUAL | lines).items()}
    found = judge_of("sheet.rules")(SHEET.lstrip().format(**said, clock=clock))
    return [(each.code, str(each.title)) for each in found]


@every_wait
@pytest.mark.parametrize("time", ["6 min", "400 s", "8 min"])
def test_a_wait_as_long_as_the_round_is_refused(lines: dict[str, str], time: str) -> None:
    assert refused(lines, time) == [("G-sense", "The clock has ended the round by then.")]


@every_wait
@pytest.mark.parametrize("time", ["5.9 min", "30 s"])
def test_a_shorter_one_is_read(lines: dict[str, str], time: str) -> None:
    assert not refused(lines, time)


@every_wait
def test_without_a_clock_any_wait_is_read(lines: dict[str, str]) -> None:
    assert not refused(lines, "8 min", clock=NO_CLOCK)

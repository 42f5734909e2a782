"""What follows from arriving at one of several places: both readers know where somebody came to."""

from __future__ import annotations

import pytest

from compose.check.check import check
from compose.net.from_game import net_of
from library import granted_sheet
from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game To the Marks
space
  court 18 m by 12 m, in one piece
  home base: 1 m deep, before each back line
  near mark: 1 m deep, in the middle
  far mark: 1 m deep, before each back line
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
kit
  3 logs, like a cone
set-up
  3 logs in the near mark
play
  players run from their home base to the near mark
  players run from their home base to the far mark of the other side
  {play}
when
  {when}
finish
  the first side to 4 points wins
"""
RUN = "a runner arrives at the near mark: the runner's side scores 1 point"
FAR = "a runner arrives at the far mark: the runner's side scores 3 points"
TAKE = "players take a log from the near mark to their home base"
WAYS = {
    "two places": ("", f"{RUN}\n  {FAR}"),
    "the narrower wins": ("", f"a runner arrives: the runner's side scores 2 points\n  {FAR}"),
    "whose it is": (
        "players run from their home base to their far mark",
        "a runner arrives at the far mark of the other side: the runner's side scores 2 points\n"
        "  a runner arrives at the runner's far mark: the runner's side scores 1 point",
    ),
    "what is brought": (
        f"{TAKE}\n  players take a log from the near mark to their far mark",
        "a log arrives at the home base: the carrier's side scores 1 point\n"
        "  a log arrives at the far mark: the carrier's side scores 2 points",
    ),
    "who goes somewhere then": ("", f"{FAR}\n  a runner arrives at the near mark: the runner waits in the rest queue"),
}


@pytest.mark.parametrize("way", WAYS)
def test_both_readers_know_where_somebody_came_to(way: str) -> None:
    play, when = WAYS[way]
    lines = [line for line in GAME.format(play=play, when=when).splitlines() if line.strip()]
    agree(game_in("\n".join(lines) + "\n"), {"north": 2, "south": 2})


@pytest.mark.parametrize(
    ("line", "idle"),
    [
        ("a runner arrives at the far mark: the runner's side scores 3 points", False),
        ("a runner arrives at the runner's far mark: the runner's side scores 3 points", True),
        ("a runner arrives at the rest queue: the runner's side scores 3 points", True),
    ],
)
def test_a_place_to_which_nobody_runs_is_told(line: str, idle: bool) -> None:
    lines = [each for each in GAME.format(play="", when=f"{RUN}\n  {line}").splitlines() if each.strip()]
    net = net_of(game_in("\n".join(lines) + "\n"), granted_sheet(), {"north": 2, "south": 2}).value
    assert net is not None
    found = [lines[finding.place.line - 1].strip() for finding in check(net).findings if finding.code == "C-idle"]
    assert (line in found) is idle

"""Stopping a ball: both readers let the same players stop it, and it lies and counts alike then."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Stopped
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 4 to 6 players each, mirrored
  role blocker: 1 player of each side, nobody aims at them
kit
  2 soft balls, like a foam ball
  2 cones for each side
  1 gate for each side, like a hoop
  2 pots, like a cone
set-up
  1 soft ball in each half
  cones on the back line of their side
  gates behind the back line of their side
  pots in the middle
play
  players overarm throw a soft ball at {aim}
  {blocks}
  {play}
when
  a cone is knocked: the thrower's side scores 1 point and it stands up again
  a pot is knocked: the thrower's side scores 1 point and it stands up again
  a ball goes through the gate: the thrower's side scores 1 point
  {when}
finish
  the first side to 2 points wins
"""
CONES = "the cones of the other side"
SHEETS = {
    "one before each": (CONES, "1 player stands before each cone", "", ""),
    "a role": (CONES, "blockers block shots at the cones with a mat", "", ""),
    "before a gate": ("the gate of the other side", "a blocker stands before each gate", "", ""),
    "before nobody's": ("the pots", "blockers block shots at the pots with the hands", "", ""),
    "of one side": (CONES, "blockers of north block shots at the cones", "", ""),
    "two kinds": (
        "the cones or the pots",
        "blockers block shots at the cones of their side or the pots with a tray",
        "",
        "",
    ),
    "all of a side that does nothing else": (
        CONES,
        "players of south block shots at the cones",
        "",
        "",
    ),
    "what follows": (
        CONES,
        "blockers block shots at the cones",
        "",
        "a ball is blocked: the keeper's side scores 1 point and the ball goes to the half it came from",
    ),
    "keepers": (
        CONES,
        "keepers block shots at the cones with the hands",
        "",
        "a ball is blocked: the keeper's side scores 1 point and the ball goes to the keeper's half",
    ),
    "where it rests": (CONES, "blockers block shots at the cones", "a blocked ball rests in the middle", ""),
    "whoever blocks may go": (
        CONES,
        "blockers block shots at the cones",
        "players overarm throw a soft ball at the players of the other side",
        "a blocker is hit: that player is out\n  a shot is blocked: the thrower waits in the rest queue",
    ),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_let_the_same_players_stop_a_ball(sheet: str) -> None:
    aim, blocks, play, when = SHEETS[sheet]
    text = GAME.format(aim=aim, blocks=blocks, play=play, when=when)
    if sheet == "keepers":
        text = text.replace("blocker", "keeper")
    if sheet.startswith("all of a side"):
        text = text.replace("  players overarm throw", "  players of north overarm throw")
    if sheet == "whoever blocks may go":
        text = text.replace(", nobody aims at them", "")
    game = game_in("\n".join(line for line in text.splitlines() if line.strip()))
    agree(game, {"north": 3, "south": 3})

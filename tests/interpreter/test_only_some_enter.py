"""An area that only some enter: both readers let the others act, throw and touch from outside alone."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Only Some
space
  court 18 m by 9 m, {cut}
  {area}
  rest queue: beside the court
sides
  north and south, 4 to 6 players each, mirrored
  role keeper: 1 player of each side
kit
  2 soft balls, like a foam ball
  2 cones for each side
  1 log for each side, like a box
set-up
  soft balls in the middle
  cones on the back line of their side
  logs in the goal zone of their side
play
  {play}
when
  a cone is knocked: the thrower's side scores 1 point and it stands up again
  {when}
finish
  the first side to 2 points wins
"""
ZONE = "goal zone: 3 m deep, before each back line, only keepers there"
THROWS = "players overarm throw a soft ball at the cones of the other side"
TOUCHED = "a player is touched: that player waits in the rest queue"
SHEETS = {
    "keepers stay": ("in one piece", ZONE, f"keepers stay in the goal zone\n  {THROWS}", ""),
    "they stop balls": (
        "in one piece",
        ZONE,
        f"keepers stay in the goal zone\n  keepers do not act\n  keepers block shots at the cones\n  {THROWS}",
        "a ball is blocked: the keeper's side has the ball",
    ),
    "a goalkeeper": (
        "in one piece",
        ZONE,
        f"keepers stay in the goal zone\n  keepers block shots at the cones\n  {THROWS}",
        "a ball is blocked: the ball goes to the keeper",
    ),
    "who stays there is never touched": (
        "in one piece",
        ZONE,
        f"keepers stay in the goal zone\n  {THROWS}\n  players touch players of the other side",
        TOUCHED,
    ),
    "those of the other side": (
        "in one piece",
        "goal zone: 3 m deep, behind each back line, only keepers of the other side there",
        f"keepers stay in the goal zone of the other side\n  {THROWS}",
        "",
    ),
    "they alone fetch": (
        "halved across",
        ZONE,
        f"{THROWS}\n  keepers do not act\n  a missed ball rests in the goal zone of the other side\n"
        "  players fetch balls from their goal zone",
        "",
    ),
    "who may go takes": (
        "halved across",
        ZONE.replace("only keepers there", "no keepers there"),
        f"{THROWS}\n  players take a log from the goal zone to the middle",
        "",
    ),
    "in halves": ("halved across", ZONE, f"players stay in their half\n  {THROWS}", ""),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_keep_the_same_players_out(sheet: str) -> None:
    cut, area, play, when = SHEETS[sheet]
    text = GAME.format(cut=cut, area=area, play=play, when=when)
    if cut == "halved across":
        text = text.replace("soft balls in the middle", "1 soft ball in each half")
    if sheet == "a goalkeeper":
        text = text.replace("keeper", "goalkeeper")
    game = game_in("\n".join(line for line in text.splitlines() if line.strip()))
    agree(game, {"north": 3, "south": 3})

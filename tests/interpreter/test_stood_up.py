"""Targets that lie at the start, that players put up, and that stand up again all at once: both readers agree."""

from __future__ import annotations

import pytest

from tests.interpreter.sheets import game_in
from tests.interpreter.test_same_states import agree

GAME = """
game Full Sets
space
  court 18 m by 9 m, halved across
sides
  north and south, 4 to 6 players each, mirrored
kit
  2 pins for each side, like a plastic pin
  3 cones
  2 foam balls
set-up
  1 foam ball in each half
  pins in the half of their side
  {set_up}
play
  players roll a foam ball at the {aim}
  {play}
when
  {when}
finish
  the first side to 2 points wins
"""
ALL_UP = "a side has no pins standing: {who} scores 1 point and {which} stand up again"
SHEETS = {
    "its set": ("cones on the middle line", "pins of the other side", "",
                ALL_UP.format(who="the other side", which="its pins")),
    "all that there are": ("cones on the middle line", "pins or the cones", "",
                           ALL_UP.format(who="the other side", which="all pins")),
    "of every side": ("cones on the middle line", "pins of the other side", "",
                      ALL_UP.format(who="the other side", which="all pins")),
    "those of that side": ("cones on the middle line", "pins of the other side", "",
                           ALL_UP.format(who="the other side", which="all pins of that side")),
    "each that is down": ("cones on the middle line", "pins of the other side", "",
                          "a side has a pin down: the other side scores 1 point"),
    "the first that is down": ("cones on the middle line", "pins of the other side", "",
                               "a side has at least 1 pin down: the other side scores 1 point"),
    "named": ("cones on the middle line", "pins of the other side", "",
              "north has no pins standing: south scores 1 point and the pins of north stand up again"),
    "one, for points": ("cones on the middle line", "cones", "",
                        "a cone is knocked: the roller's side scores 1 point\n"
                        "  a ball is caught: a pin of the catcher's side stands up again"),
    "some lie": ("2 cones lying on the middle line\n  1 cone on the middle line", "cones", "",
                 "a cone is knocked: the roller's side scores 1 point"),
    "the teacher puts them up": ("cones lying on the middle line", "cones",
                                 "the teacher stands up a cone, 2 times a minute",
                                 "a cone is knocked: the roller's side scores 1 point"),
    "nobody is left to put them up": ("cones lying on the middle line", "cones or the players of the other side",
                                      "players of south stand up a cone, 2 times a minute",
                                      "a player is hit: that player is out and the roller's side scores 1 point"),
    "players put them up": ("cones lying on the middle line", "cones",
                            "players stand up a cone, 2 times a minute",
                            "a cone is knocked: the roller's side scores 1 point"),
}  # fmt: skip


@pytest.mark.parametrize("sheet", SHEETS)
def test_both_readers_put_up_the_same(sheet: str) -> None:
    set_up, aim, play, when = SHEETS[sheet]
    text = GAME.format(set_up=set_up, aim=aim, play=play, when=when)
    agree(game_in("\n".join(line for line in text.splitlines() if line.strip())), {"north": 2, "south": 2})

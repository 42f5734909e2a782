"""Whose players an area keeps out, or lets in only so many of, is told with whose they are."""

from __future__ import annotations

import pytest

from compose.telling.areas import areas_told
from compose.telling.voice import Voice
from compose.telling.wording import wording_of
from grammar.core.reading.from_game import core_of
from tests.interpreter.sheets import game_in, granted

SHEET = """
game Rings
space
  court 18 m by 10 m, halved across
  store base: 2 m deep, before each back line, {rule}
sides
  north and south, 6 to 12 players each, mirrored
kit
  4 logs for each side, like a box
set-up
  logs in the store base of their side
play
  players take a log from the store base of the other side to their store base
finish
  a side wins when it has 6 logs in its store base
  after 5 min: more logs in their store base wins, else a draw
"""


@pytest.mark.parametrize("language", ["en", "fr"])
@pytest.mark.parametrize("rule", ["no players{} there", "at most 2 players{} there"])
def test_whose_they_are_is_told(rule: str, language: str) -> None:
    told = set()
    for whose in ("", " of its side", " of the other side"):
        game = game_in(SHEET.format(rule=rule.format(whose)))
        core = core_of(game, granted()).value
        assert core is not None
        told.add(" ".join(areas_told(Voice(core, wording_of(language)), core.play.areas)))
    assert len(told) == 3, told

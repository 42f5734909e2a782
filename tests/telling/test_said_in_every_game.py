"""What a sheet says though it is so in every game, and what stands behind "or" alone."""

from __future__ import annotations

import pytest
from told_sheets import core_in, row, told, understood

from compose.telling.read_back import Topic
from compose.telling.unread import without_lines
from compose.telling.wording import ENGLISH
from tests.interpreter.sheets import game_in

SO_ANYWAY = ("each player holds only one foam ball at a time", "nobody holds more than one ball")
THROW = "overarm throw a foam ball at the beacons of the other side"
INTO = "overarm throw a foam ball into the open boxes or the buckets of the other side"
KIT = "3 open boxes for each side\n2 buckets for each side"
SET_UP = "open boxes and buckets on the back line of their side"


@pytest.mark.parametrize("line", SO_ANYWAY)
def test_what_is_so_in_every_game_is_not_told_as_unread(line: str) -> None:
    sheet = row(play=line)
    topics = [section.topic for section in understood(sheet).sections]
    assert Topic.ANYWAY in topics
    assert Topic.UNREAD not in topics
    assert without_lines(core_in(game_in(sheet)), ENGLISH) == ""


def test_what_stands_behind_or_alone_is_aimed_at_as_what_stands_before_it() -> None:
    said = told(row({"play": (THROW, INTO)}, kit=KIT, set_up=SET_UP))
    assert "into the open boxes of the other side or the buckets of the other side" in said
    assert told(row({"play": (THROW, INTO.replace("or the", "or into the"))}, kit=KIT, set_up=SET_UP)) == said
    assert told(row({"play": (THROW, INTO.replace("or the", "or at the"))}, kit=KIT, set_up=SET_UP)) != said

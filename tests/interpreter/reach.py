"""What a rolled ball cannot reach: what hangs above it, and rings that do not stand on the floor."""

from __future__ import annotations

import library
from tests.interpreter.aims import Target
from tests.interpreter.board import Board
from tests.interpreter.sheet import Sheet

UNKNOWN_BALL_CM = 20.0  # assumption


def hangs_too_high(sheet: Sheet, board: Board, skill: str, ball: str | None, aim: Target) -> bool:
    """A ball that rolls stays below what hangs, goes through rings on the floor, and into nothing that opens up."""
    if skill != "roll" or aim.thing is None:
        return False
    kit = library.kit_names()
    thing = kit.get(sheet.like(board.things[aim.thing].kind))
    above_cm = thing.stands_above_floor_cm.usual if thing and thing.stands_above_floor_cm else 0.0
    item = kit.get(sheet.like(ball)) if ball else None
    ball_cm = item.diameter_cm.usual if item and item.diameter_cm else UNKNOWN_BALL_CM
    if aim.what == "ring" and thing and thing.opens == "up" and thing.height_cm:
        above_cm += thing.height_cm.usual  # it would have to get over the edge
    return above_cm > (0.0 if aim.what == "ring" else ball_cm)

"""Pupils who rest while others play: a row of signs below the plan, for nobody says where in the hall they sit."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.plan.sheet import Sheet
from compose.draw.signs.palette import DARK, NOBODY
from compose.draw.signs.shapes import Label
from compose.draw.signs.symbols import player
from compose.staging.floor.values import Rectangle
from compose.telling.wording import Wording
from grammar.frozen import evolve


def draw_resting(sheet: Sheet, box: Rectangle, pupils: int) -> Rectangle:
    """One sign for each of them, with how many they are; gives what is drawn with them, in the metres of the sheet."""
    if not pupils:
        return box
    radius, size = sheet.least_m, sheet.text_m
    words = sheet.wording.say("Resting: {pupils}", pupils=sheet.wording.counted(pupils, "pupil", "pupils"))
    top = box.bottom - 1.2 * size
    sheet.shapes.append(Label(box.left + radius, top, words, size, DARK, "start"))
    low = top
    for x, y in _rows(box, top - 0.6 * size, radius, pupils):
        sheet.shapes.extend(player(NOBODY, x, y, radius))
        low = y - 1.5 * radius
    return evolve(box, bottom=low)


def _rows(box: Rectangle, top: float, radius: float, pupils: int) -> Iterator[tuple[float, float]]:
    """The middle of each sign, row by row under the plan."""
    apart = 2.6 * radius
    across = max(1, int(box.length / apart))
    for number in range(pupils):
        row, column = divmod(number, across)
        yield box.left + radius + column * apart, top - radius - row * apart


def resting_told(pupils: int, wording: Wording) -> tuple[str, ...]:
    """The same in words; nothing where nobody rests."""
    counted = wording.counted(pupils, "pupil", "pupils")
    return (wording.say("Resting: {pupils}, who come on in later rounds.", pupils=counted),) if pupils else ()

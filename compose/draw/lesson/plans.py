"""The drawing of a lesson: its minutes as a bar, and below it the set-up of each game, small."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.draw.lesson.timetable import LessonTable
from compose.draw.plan.small import small_plan
from compose.draw.signs.lettering import shortened
from compose.draw.signs.palette import DARK, WHITE
from compose.draw.signs.shapes import Drawing, Ink, Label, Shape, moved, rectangle, scaled
from compose.telling.wording import Wording

NAMED, BETWEEN = 3.6, 2.0  # hundredths of the bar: the name above a plan, from plan to plan
HIGH = {1: 32.0, 2: 26.0}  # hundredths of the bar, by how many games there are: a plan at most
OF_MANY = 20.0


def with_plans(bar: Drawing, table: LessonTable, wording: Wording) -> Drawing:
    """The bar with the plans below it, one beside the other."""
    unit = table.lesson.minutes / 100
    plans = [shape for order in range(len(table.games)) for shape in _plan(bar, table, order, wording)]
    lows = [_low(bar, table, order, wording) for order in range(len(table.games))]
    box = evolve(bar.box, bottom=min(lows) - unit)
    paper = rectangle(box, Ink(WHITE))
    set_up = " ".join(f"{order}. {one.game.title}." for order, one in enumerate(table.games, start=1))
    words = f"{bar.description}. {set_up}"
    return Drawing(bar.title, words, box, (paper, *bar.shapes[1:], *plans))


def _cell(table: LessonTable) -> float:
    unit, games = table.lesson.minutes / 100, len(table.games)
    return (table.lesson.minutes - (games - 1) * BETWEEN * unit) / games


def _scale(table: LessonTable, small: Drawing) -> float:
    unit = table.lesson.minutes / 100
    high = HIGH.get(len(table.games), OF_MANY)
    return min(_cell(table) / small.box.length, high * unit / small.box.width)


def _low(bar: Drawing, table: LessonTable, order: int, wording: Wording) -> float:
    small = _small(table, order, wording)
    return bar.box.bottom - NAMED * table.lesson.minutes / 100 - small.box.width * _scale(table, small)


def _small(table: LessonTable, order: int, wording: Wording) -> Drawing:
    one = table.games[order]
    return small_plan(one.game, one.staging.court.floor, wording)


def _plan(bar: Drawing, table: LessonTable, order: int, wording: Wording) -> Iterator[Shape]:
    """The name of a game with its courts, and its set-up on one of them."""
    unit, small = table.lesson.minutes / 100, _small(table, order, wording)
    by, left, top = _scale(table, small), order * (_cell(table) + BETWEEN * unit), bar.box.bottom - NAMED * unit
    one = table.games[order]
    courts = len(one.staging.courts)
    name = f"{order + 1}. {one.game.title}" + (f" ({wording.counted(courts, 'court', 'courts')})" if courts > 1 else "")
    size = 2.1 * unit
    yield Label(left, top + 1.0 * unit, shortened(name, size, _cell(table)), size, DARK, "start", True)
    for shape in small.shapes:
        yield moved(scaled(shape, by), left - small.box.left * by, top - small.box.top * by)

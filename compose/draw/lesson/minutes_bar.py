"""The minutes of a lesson as a bar with its key, and each stretch of it in words."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.lesson.timetable import (
    ARRIVE,
    CHANGE_OVER,
    CLEAR,
    COOL_DOWN,
    EXPLAIN,
    PLAY,
    SET_UP,
    WARM_UP,
    LessonTable,
    Slot,
)
from compose.draw.signs.lettering import width_em
from compose.draw.signs.palette import ACCENT, DARK, MIDDLE, PALE, STYLES, WHITE, SideStyle
from compose.draw.signs.shapes import Drawing, Ink, Label, Lines, Shape, hatch, rectangle
from compose.staging.floor.values import Rectangle
from compose.telling.amounts import minutes_said, rounds_said
from compose.telling.wording import ENGLISH, Wording

NAMES = {
    ARRIVE: "Change and arrive",
    WARM_UP: "Warm-up",
    SET_UP: "Set up",
    EXPLAIN: "Explain",
    PLAY: "Play",
    CHANGE_OVER: "Change over",
    COOL_DOWN: "Cool-down and talk",
    CLEAR: "Clear away",
}

ALIKE = (((ARRIVE, CLEAR), False), ((WARM_UP, COOL_DOWN), False), ((SET_UP, CHANGE_OVER), True), ((EXPLAIN,), True))


def _clock(minutes: float) -> str:
    """ "0:05": to the nearest minute."""
    number = round(minutes)
    return f"{number // 60}:{number % 60:02}"


def slot_line(table: LessonTable, slot: Slot, wording: Wording) -> str:
    """ "0:13–0:28  Play: Lantern Row, 3 rounds of about 4.5 min, 42 s between: 14.9 min"."""
    say, lead = wording.say, f"{_clock(slot.start)}–{_clock(slot.end)}  {wording.say(NAMES[slot.kind])}"
    if slot.kind in (ARRIVE, CLEAR, COOL_DOWN) or slot.game is None:
        return lead
    one = table.games[slot.game]
    lead = f"{lead}{say(':')} {one.game.title}"
    return f"{lead}, {play_said(slot, wording)}" if slot.kind == PLAY else lead


def play_said(slot: Slot, wording: Wording) -> str:
    """What is played of a game in a stretch of play, as `rounds_said` tells it."""
    if not slot.rounds:
        return wording.say("one round, stopped after {time}", time=minutes_said(slot.minutes, wording))
    return rounds_said(slot.played, wording)


def time_bar(table: LessonTable, wording: Wording = ENGLISH, larger: float = 1.0) -> Drawing:
    """The lesson as a bar, one metre of drawing to a minute; each game has the colour of a side. Its height and its
    words are `larger` where the bar is shown on something narrow."""
    total = table.lesson.minutes
    unit = larger * total / 100
    high, size = 7.0 * unit, 2.1 * unit
    shapes: list[Shape] = []
    for slot in table.slots:
        box = Rectangle(slot.start, 0.0, slot.end, high)
        style = STYLES[slot.game % len(STYLES)] if slot.game is not None else None
        shapes.extend(_band(box, slot.kind, style, unit))
        if slot.kind == PLAY and style:
            number = str((slot.game or 0) + 1)
            shapes.append(
                Label(
                    (box.left + box.right) / 2,
                    0.5 * high - 0.36 * 2.6 * unit,
                    number,
                    2.6 * unit,
                    style.mark,
                    "middle",
                    True,
                )
            )
    for tick in range(0, int(total) + 1, 5 if 2.4 * size < 5 else 10):
        shapes.append(Lines((((tick, -0.9 * unit), (tick, 0.0)),), Ink(stroke=MIDDLE, width_m=0.2 * unit)))
        shapes.append(Label(tick, -3.1 * unit, str(tick), size, DARK, "middle"))
    low = -6.2 * unit
    for line in _fitting(wording.say("minutes from the start; numbers are the games"), total / size):
        shapes.append(Label(0.0, low, line, size, MIDDLE))
        low -= 3.0 * unit
    key = list(_key(table, low, unit, wording))
    shapes.extend(key)
    low = min(shape.y for shape in key if isinstance(shape, Label))
    shapes.append(rectangle(Rectangle(0.0, 0.0, total, high), Ink(None, ACCENT, 0.35 * unit)))
    box = Rectangle(-2.5 * unit, low - unit, total + 2.5 * unit, high + unit)
    words = "; ".join(slot_line(table, slot, wording) for slot in table.slots)
    return Drawing(wording.say("The lesson, minute by minute"), words, box, (rectangle(box, Ink(WHITE)), *shapes))


def _fitting(told: str, width: float) -> list[str]:
    """A text in one line of so many widths of a letter, or each of its parts in a line of its own."""
    return [told] if width_em(told) <= width else [part.strip() for part in told.split(";")]


def _band(box: Rectangle, kind: str, style: SideStyle | None, unit: float) -> Iterator[Shape]:
    """A stretch of the bar: play is full, what belongs to a game is pale, and where kit or clothes move is hatched."""
    fill = style.fill if style and kind == PLAY else style.tint if style else WHITE
    yield rectangle(box, Ink(fill, DARK, 0.15 * unit))
    if kind in (ARRIVE, CLEAR, SET_UP, CHANGE_OVER):
        yield hatch(box, 1.2 * unit, Ink(stroke=PALE, width_m=0.2 * unit))


def _key(table: LessonTable, low: float, unit: float, wording: Wording) -> Iterator[Shape]:
    """What the bands stand for, one beside the other, and on further lines where the bar ends."""
    x, size = 0.0, 1.8 * unit
    there = {slot.kind for slot in table.slots}
    for kinds, of_game in ALIKE:
        named = [wording.say(NAMES[kind]) for kind in kinds if kind in there]
        if named:
            style, told = STYLES[0] if of_game else None, " / ".join(named)
            wide = 3.8 * unit + width_em(told) * size
            if x and x + wide > table.lesson.minutes:
                x, low = 0.0, low - 2.6 * unit
            yield from _band(Rectangle(x, low - 0.2 * unit, x + 3.0 * unit, low + 1.6 * unit), kinds[0], style, unit)
            yield Label(x + 3.8 * unit, low + 0.1 * unit, told, size, DARK)
            x += wide + 2.2 * unit

"""Moments of a round → a strip of four to eight small plans, each with one sentence and its counts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.draw.plan.legend import legend_below
from compose.draw.plan.sheet import Sheet, without_throws
from compose.draw.signs.lettering import width_em
from compose.draw.signs.palette import ACCENT, DARK, MIDDLE, WHITE
from compose.draw.signs.shapes import Disc, Drawing, Ink, Label, Shape, moved, rectangle, scaled
from compose.draw.strip.moments import Moment
from compose.draw.strip.picture import frame_box, frame_of, frame_sheet
from compose.draw.strip.whereabouts import Token, scenes
from compose.net.net import Net
from compose.staging.floor.ground import ground_under
from compose.staging.floor.values import Floor, Rectangle
from compose.staging.resolved import resolved
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import field, frozen
from grammar.game import Game

GAP = 6.0  # hundredths of a frame's length between frames
COURTS = 1.8  # our choice: heights of a frame that the plan of all courts takes at most
LINE = 1.35  # sizes of letters from line to line


@frozen
class Strip:
    """A round in pictures. `frames` has one small plan for each moment, all with the same box; `courts` is the plan of
    all courts, of which the round is played on the first, where there are several."""

    title: str
    about: str
    game: Game
    floor: Floor
    moments: tuple[Moment, ...]
    scenes: tuple[tuple[Token, ...], ...] = field(repr=False)
    frames: tuple[Drawing, ...] = field(repr=False)
    wording: Wording = ENGLISH
    courts: Drawing | None = field(default=None, repr=False)


def strip_of(
    game: Game,
    floor: Floor,
    net: Net,
    moments: Sequence[Moment],
    title: str,
    about: str,
    wording: Wording = ENGLISH,
    courts: Drawing | None = None,
) -> Strip:
    """The strip of a round; `about` says where the round comes from."""
    shown = scenes(net, floor, ground_under(floor, resolved(game).play), [moment.marking for moment in moments])
    box = frame_box(floor, frame_sheet(game, floor), [token for scene in shown for token in scene])
    frames = tuple(
        frame_of(game, floor, scene, box, (_name(order, wording), f"{moment.sentence} {moment.counts}."), wording)
        for order, (moment, scene) in enumerate(zip(moments, shown, strict=True), start=1)
    )
    return Strip(title, about, game, floor, tuple(moments), shown, frames, wording, courts)


def _name(order: int, wording: Wording) -> str:
    return wording.say("Picture {order}", order=order)


def drawing_of(strip: Strip, columns: int = 2) -> Drawing:
    """The whole strip as one drawing, row by row, the sentence below each picture, one legend at the end."""
    box = strip.frames[0].box
    unit = box.length / 100
    wide = columns * box.length + (columns - 1) * GAP * unit
    shapes: list[Shape] = [Label(0.0, 0.0, strip.title, 5.0 * unit, ACCENT, "start", True)]
    y = -5.5 * unit
    for line in _wrapped(strip.about, 3.2 * unit, wide):
        shapes.append(Label(0.0, y, line, 3.2 * unit, MIDDLE))
        y -= 3.2 * unit * LINE
    y -= 1.5 * unit
    if strip.courts is not None:
        seen = strip.courts.box
        by = min(wide / seen.length, COURTS * box.width / seen.width)
        shapes.extend(moved(scaled(shape, by), -seen.left * by, y - seen.top * by) for shape in strip.courts.shapes)
        y -= seen.width * by + 5.0 * unit
    for first in range(0, len(strip.frames), columns):
        lows = []
        for column, order in enumerate(range(first, min(first + columns, len(strip.frames)))):
            x = column * (box.length + GAP * unit)
            shapes.extend(moved(shape, x - box.left, y - box.top) for shape in strip.frames[order].shapes)
            below = list(_words(strip.moments[order], order + 1, x, y - box.width - 1.0 * unit, unit))
            shapes.extend(below)
            lows.append(min(label.y for label in below if isinstance(label, Label)))
        y = min(lows) - 6.0 * unit
    # Throws are for the plan of the whole page.
    sheet = Sheet(without_throws(strip.game), strip.floor, unit, 1.6, wording=strip.wording)
    low = legend_below(sheet, Rectangle(0.0, y, wide, y), y + 2.0 * unit, (), False)
    shapes.extend(sheet.shapes)
    whole = Rectangle(-3.0 * unit, low - 2.0 * unit, wide + 3.0 * unit, 6.5 * unit)
    described = " ".join(f"{order}. {moment.sentence}" for order, moment in enumerate(strip.moments, start=1))
    return Drawing(strip.title, described, whole, (rectangle(whole, Ink(WHITE)), *shapes))


def _words(moment: Moment, number: int, x: float, y: float, unit: float) -> Iterator[Shape]:
    """A disc with the picture's number, when it was, the sentence, the counts."""
    size = 3.3 * unit
    yield Disc(x + 2.6 * unit, y - 2.8 * unit, 2.6 * unit, Ink(ACCENT))
    yield Label(x + 2.6 * unit, y - 2.8 * unit - 0.36 * size, str(number), size, WHITE, "middle", True)
    left, room, low = x + 6.6 * unit, 93.0 * unit, y - 2.8 * unit - 0.36 * size
    lead = f"{moment.stamp}  " if moment.stamp else ""
    for line in _wrapped(f"{lead}{moment.sentence}", size, room):
        yield Label(left, low, line, size, DARK, "start", False)
        low -= LINE * size
    for line in _wrapped(moment.counts, 0.86 * size, room):
        yield Label(left, low, line, 0.86 * size, MIDDLE)
        low -= LINE * 0.86 * size


def _wrapped(text: str, size: float, room: float) -> list[str]:
    """The text in lines that fit into the room; a longer word has a line of its own."""
    lines = [""]
    for word in text.split(" "):
        tried = f"{lines[-1]} {word}".lstrip()
        if lines[-1] and width_em(tried) * size > room:
            lines.append(word)
        else:
            lines[-1] = tried
    return [line for line in lines if line]

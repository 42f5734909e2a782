"""Below the plan or beside it: a scale bar, captions, and a legend in columns that its words fit into."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from compose.draw.plan.court import area_shapes
from compose.draw.plan.sheet import Sheet
from compose.draw.plan.throws import goal, metres, shown_throws, to_what
from compose.draw.signs.lettering import widest
from compose.draw.signs.palette import DARK, MIDDLE, WHITE
from compose.draw.signs.shapes import Ink, Label, Lines, Shape, arrow, rectangle
from compose.draw.signs.symbols import WIDE_M, player, symbol, wide_thing
from compose.draw.units import FOOT_M
from compose.staging.floor.items import USUAL_SIZE_M
from compose.staging.floor.values import FloorArea, FloorItem, Rectangle
from compose.telling.french import one_of_a_kind, side_label
from grammar.core.declared import Doing
from grammar.core.values import Sort
from grammar.frozen import evolve, frozen
from grammar.game import GameKit
from grammar.words import article, plural

SLOT = 4.4  # units of a sign with the space after it
GAP = 2.4  # units between columns
LINE = 3.1  # units from line to line


@frozen
class Entry:
    """A sign, drawn around a point, and its words."""

    sign: Callable[[float, float], tuple[Shape, ...]]
    words: str


def entries(sheet: Sheet, in_hall: bool) -> list[Entry]:
    """All signs of this plan: players, kit, areas, throws, clear floor."""
    found = [*_players(sheet), *_kit(sheet), *_areas(sheet), *_tracks(sheet), *_throws(sheet)]
    return [*found, _clear(sheet)] if in_hall else found


def _clear(sheet: Sheet) -> Entry:
    reach, tick, ink = 1.6 * sheet.key_unit, 0.5 * sheet.key_unit, Ink(stroke=MIDDLE, width_m=0.15 * sheet.key_unit)

    def draw(x: float, y: float) -> tuple[Shape, ...]:
        ends = (((x - reach, y - tick), (x - reach, y + tick)), ((x + reach, y - tick), (x + reach, y + tick)))
        return (Lines((((x - reach, y), (x + reach, y)), *ends), ink),)

    return Entry(draw, sheet.wording.say("clear floor"))


def _players(sheet: Sheet) -> Iterator[Entry]:
    for side in sheet.sides:
        for role in dict.fromkeys(item.role for item in sheet.floor.players_of(side)):
            here = [item for item in sheet.floor.players_of(side) if item.role == role]
            style, radius = sheet.style(side), 1.05 * sheet.key_unit
            players = sheet.wording.counted(len(here), role or "player", plural(role or "player"))
            words = sheet.wording.say("{side}: {players}", side=side_label(sheet.wording, side), players=players)
            yield Entry(lambda x, y, s=style, r=radius, e=role: player(s, x, y, r, e), words)  # type: ignore[misc]


def _kit(sheet: Sheet) -> Iterator[Entry]:
    for line in sheet.game.kit:
        items = sheet.floor.items_of(line.name)
        if items:
            yield Entry(_sign_of(sheet, items[0]), _kit_words(sheet, line, len(items)))
        else:  # what comes in later is part of the game, too
            size_m = USUAL_SIZE_M[Sort(line.category)]
            kept = FloorItem(line.name, line.category, None, 0.0, 0.0, *size_m)
            words = sheet.wording.say("{things}: not on the floor at first", things=_kit_words(sheet, line, line.count))
            yield Entry(_sign_of(sheet, kept), words)


def _kit_words(sheet: Sheet, line: GameKit, number: int) -> str:
    """ "lanterns (like a skittle)"."""
    name, like = sheet.wording.named(line.plural if number > 1 else line.name), line.like
    if like == line.name:
        return name
    what = article(like) if sheet.wording.english else one_of_a_kind(sheet.wording, like)
    return f"{name} ({sheet.wording.say('like {what}', what=what)})"


def _sign_of(sheet: Sheet, item: FloorItem) -> Callable[[float, float], tuple[Shape, ...]]:
    def draw(x: float, y: float) -> tuple[Shape, ...]:
        size = min(item.width_m, 2.4 * sheet.key_unit)
        if item.category == "target" and item.width_m > WIDE_M:
            return wide_thing(sheet.style(item.side), x, y, size)
        high = size * item.height_m / item.width_m if item.width_m else size
        shown = FloorItem(item.name, item.category, item.side, x, y, size, high)
        return symbol(shown, sheet.style(item.side), 0.85 * sheet.key_unit, sheet.ball_kind(item.name))

    return draw


def _areas(sheet: Sheet) -> Iterator[Entry]:
    for name in dict.fromkeys(area.name for area in sheet.floor.areas):
        area = sheet.floor.areas_of(name)[0]
        shut = next((doing for doing in Doing if doing in area.shut), None)
        say, rule = sheet.wording.say, f"nobody {shut.value} there" if shut else ""
        own = sheet.wording.named(name)
        words = say("{name}: {rule}", name=own, rule=say(rule)) if rule else own
        yield Entry(_swatch(sheet, area), words)


def _tracks(sheet: Sheet) -> Iterator[Entry]:
    reach, ink = sheet.key_unit, Ink(stroke=MIDDLE, width_m=0.15 * sheet.key_unit, dash=(0.3 * sheet.key_unit,) * 2)

    def draw(x: float, y: float) -> tuple[Shape, ...]:
        return (Lines(tuple(((x + off, y - reach), (x + off, y + reach)) for off in (-reach, 0.0, reach)), ink),)

    for track in sheet.floor.tracks:
        steps = sheet.wording.counted(len(track.steps) - 1, "step", "steps")
        yield Entry(draw, sheet.wording.say("{name}: {steps}", name=sheet.wording.named(track.name), steps=steps))


def _swatch(sheet: Sheet, area: FloorArea) -> Callable[[float, float], tuple[Shape, ...]]:
    def draw(x: float, y: float) -> tuple[Shape, ...]:
        long, high = 1.5 * sheet.key_unit, 0.95 * sheet.key_unit
        box = Rectangle(x - long, y - high, x + long, y + high)
        return area_shapes(FloorArea(area.name, area.kind, area.owner, box), sheet)

    return draw


def _throws(sheet: Sheet) -> Iterator[Entry]:
    every = shown_throws(sheet)
    ink = Ink(stroke=DARK, width_m=0.3 * sheet.key_unit, dash=(0.9 * sheet.key_unit, 0.5 * sheet.key_unit))
    for_all = Entry(
        lambda x, y: arrow((x - 1.6 * sheet.key_unit, y), (x + 1.6 * sheet.key_unit, y), 1.5 * sheet.key_unit, ink),
        sheet.wording.say("usual distance, and to what"),
    )
    if any(throw.reach.start for throw in every if throw not in sheet.told_below):
        yield for_all
    for throw in every:
        if throw.reach.start is None or throw in sheet.told_below:
            far = metres(throw.reach.metres, sheet.wording)
            said = "{distance} to {what}" if throw.reach.start else "{distance} to {what}, from anywhere"
            yield evolve(for_all, words=to_what(said, far, goal(sheet, throw), sheet.wording))


def legend_below(sheet: Sheet, around: Rectangle, top: float, captions: tuple[str, ...], in_hall: bool) -> float:
    """Everything below `top`, as wide as `around`, or wider where its words are; gives the lowest y that it needs."""
    left, right = around.left, around.right
    unit, size = sheet.key_unit, 0.95 * sheet.text_m
    y = top - LINE * unit
    start = draw_scale(sheet, left, y) + GAP * unit
    for order, caption in enumerate(captions):
        y -= 0.8 * LINE * unit if order else 0.0
        sheet.shapes.append(Label(start, y, caption, size, DARK))
    y -= 0.5 * unit
    found = entries(sheet, in_hall)
    columns = _columns(found, right - left, size, unit)
    for order, entry in enumerate(found):
        row, column = divmod(order, len(columns))
        _draw_entry(sheet, entry, left + sum(columns[:column]), y - (row + 1) * LINE * unit)
    rows = -(-len(found) // len(columns))
    return y - rows * LINE * unit - 1.2 * unit


def legend_beside(
    sheet: Sheet, left: float, top: float, captions: tuple[str, ...], in_hall: bool
) -> tuple[float, float]:
    """The legend in one column right of the plan; gives its right edge and the lowest y that it needs."""
    unit, size = sheet.key_unit, 0.95 * sheet.text_m
    found = entries(sheet, in_hall)
    wide = max(SLOT * unit + widest(entry.words for entry in found) * size, widest(captions) * size) + 0.5 * unit
    y = top - 0.8 * unit
    for order, entry in enumerate(found):
        _draw_entry(sheet, entry, left, y - (order + 0.6) * LINE * unit)
    y -= (len(found) + 0.6) * LINE * unit
    for order, caption in enumerate(captions):
        sheet.shapes.append(Label(left, y - order * 0.8 * LINE * unit, caption, size, DARK))
    y -= (0.8 * len(captions) + 0.9) * LINE * unit
    draw_scale(sheet, left, y)
    return left + wide, y - unit


def _draw_entry(sheet: Sheet, entry: Entry, x: float, low: float) -> None:
    unit, size = sheet.key_unit, 0.95 * sheet.text_m
    sheet.shapes.extend(entry.sign(x + 1.7 * unit, low + 0.33 * size))
    sheet.shapes.append(Label(x + SLOT * unit, low, entry.words, size, DARK))


def _columns(found: list[Entry], room: float, size: float, unit: float) -> list[float]:
    """The widths of as many columns as fit beside each other; a single one is as wide as there is room."""
    for count_of in range(min(4, len(found)), 1, -1):
        columns = [found[first::count_of] for first in range(count_of)]
        wide = [(SLOT + GAP) * unit + widest(entry.words for entry in column) * size for column in columns]
        if sum(wide) - GAP * unit <= room:
            return wide
    return [room]


def draw_scale(sheet: Sheet, left: float, y: float) -> float:
    """A bar of 1 m (or 5 ft) steps, dark and light in turn; gives the x where its words end."""
    unit, size = sheet.key_unit, 0.9 * sheet.text_m
    steps = 5 if sheet.floor.length_m >= 10 else 2
    each = 1.0
    if sheet.units.feet:
        steps, each = (3, 5 * FOOT_M) if steps == 5 else (2, 3 * FOOT_M)
    high, long = 0.8 * unit, steps * each
    for step in range(steps):
        box = Rectangle(left + step * each, y, left + (step + 1) * each, y + high)
        sheet.shapes.append(rectangle(box, Ink(DARK if step % 2 == 0 else WHITE, DARK, 0.15 * unit)))
    sheet.shapes.append(Label(left, y + 1.2 * unit, "0", 0.85 * size, MIDDLE, "start"))
    words = f"{round(long / FOOT_M)} ft" if sheet.units.feet else f"{steps} m"
    sheet.shapes.append(Label(left + long, y + 1.2 * unit, words, 0.85 * size, MIDDLE, "middle"))
    return left + long + 1.2 * unit

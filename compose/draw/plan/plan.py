"""Game and floor → the floor plan as shapes, to scale, with or without a hall around the court."""

from __future__ import annotations

from compose.draw.plan.court import draw_court, draw_sizes, draw_tracks, name_areas, name_sides
from compose.draw.plan.hall import (
    HallSeen,
    draw_hall_floor,
    draw_north,
    draw_walls,
    hall_seen,
    hall_words,
    lines_told,
    name_fixed,
)
from compose.draw.plan.intrusion import hatch_intrusions, intruding, name_intrusions
from compose.draw.plan.legend import legend_below, legend_beside
from compose.draw.plan.resting import draw_resting, resting_told
from compose.draw.plan.run_off import draw_run_off
from compose.draw.plan.sheet import Sheet
from compose.draw.plan.throws import draw_throws, goal, metres, shown_throws
from compose.draw.signs.labelling import box_of
from compose.draw.signs.palette import WHITE
from compose.draw.signs.shapes import Drawing, Ink, Label, rectangle
from compose.draw.signs.symbols import symbol
from compose.draw.units import METRIC, Units, in_units
from compose.staging.floor.values import Floor, Rectangle
from compose.telling.french import side_label
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game
from library.records import Hall

__all__ = ["described", "drawn_hall", "finished", "plan_of", "plan_on_card"]

WINDS = {"north", "east", "south", "west"}


def plan_of(
    game: Game,
    floor: Floor,
    hall: Hall | None = None,
    *,
    court: Rectangle | None = None,
    turned: bool = False,
    resting: int = 0,
    legend: str = "below",
    letters: float = 1.0,
    units: Units = METRIC,
    wording: Wording = ENGLISH,
) -> Drawing:
    """The plan of a floor; with a hall its walls, doors, fixed things and run-off are drawn too.

    `legend` is "below" (for a plan of its own) or "beside" (for the breadth of a card); `letters` above 1
    makes all words larger. `units` are those of the figures; the plan itself is the same. `court` is what the floor
    takes of the hall, in its metres (its middle, where nobody says it), `turned` where it lies across the hall. So many
    pupils are `resting`: they are drawn below it.
    """
    seen = hall_seen(floor, hall, court, turned) if hall else None
    around = floor.extent.joined(seen.walls) if seen else floor.extent
    unit = max(around.length, 1.6 * around.width) / 100
    sheet = Sheet(game, floor, unit, letters, units, wording)
    _draw_floor(sheet, seen)
    box = drawn_hall(sheet, seen, around, turned) if seen else _drawn_sizes(sheet)
    box = draw_resting(sheet, box, resting)
    words = " ".join((described(game, floor, hall, wording, seen), *resting_told(resting, wording)))
    return finished(sheet, (box, around), _captions(game, hall, wording), legend, hall is not None, words)


def finished(
    sheet: Sheet, boxes: tuple[Rectangle, Rectangle], captions: tuple[str, ...], legend: str, in_hall: bool, words: str
) -> Drawing:
    """The drawing with its legend; `boxes` are what is drawn with all words around it, and the floor alone."""
    (box, around), unit = boxes, sheet.unit
    if legend == "beside":
        right, low = legend_beside(sheet, box.right + 2.0 * unit, box.top - unit, captions, in_hall)
        whole = Rectangle(box.left, min(box.bottom, low), right, box.top)
    else:
        low = legend_below(sheet, around, box.bottom, captions, in_hall)
        whole = Rectangle(box.left, low, box.right, box.top)
    for shape in sheet.shapes:  # on a very narrow court words can be broader than what they name
        whole = whole.joined(box_of(shape)) if isinstance(shape, Label) else whole
    paper = rectangle(whole, Ink(WHITE))
    title = sheet.wording.say("Floor plan of {game}", game=sheet.game.title)
    return in_units(Drawing(title, words, whole, (paper, *sheet.shapes)), sheet.units)


def on_card(large: bool) -> tuple[str, float]:
    """Where the legend stands on a card, and how large letters are; `large` has bigger words, and the legend below."""
    return ("below", 1.25) if large else ("beside", 1.35)


def plan_on_card(
    game: Game,
    floor: Floor,
    hall: Hall | None = None,
    *,
    court: Rectangle | None = None,
    turned: bool = False,
    resting: int = 0,
    units: Units = METRIC,
    wording: Wording = ENGLISH,
    large: bool = False,
) -> Drawing:
    """The plan as it stands on a card."""
    legend, letters = on_card(large)
    return plan_of(
        game,
        floor,
        hall,
        court=court,
        turned=turned,
        resting=resting,
        legend=legend,
        letters=letters,
        units=units,
        wording=wording,
    )


def _draw_floor(sheet: Sheet, seen: HallSeen | None) -> None:
    """Everything that lies on the floor, from the lowest layer to the names on top."""
    floor = sheet.floor
    if seen:
        draw_hall_floor(sheet, seen)
    draw_court(sheet)
    draw_tracks(sheet)
    if seen:
        draw_walls(sheet, seen)
        hatch_intrusions(sheet, (floor.extent,), seen)
    for item in floor.items:
        reach = sheet.shown(item)
        sheet.clearings.take(Rectangle(item.x, item.y, item.x, item.y).grown(reach).joined(item.box))
    draw_throws(sheet)
    for item in sorted(floor.items, key=lambda thing: thing.on is not None):
        sheet.shapes.extend(symbol(item, sheet.style(item.side), sheet.least_m, sheet.ball_kind(item.name)))
    name_sides(sheet, seen.walls.top - floor.extent.top if seen else floor.length_m)
    name_areas(sheet)
    if seen:
        name_intrusions(sheet, (floor.extent,), seen)


def _drawn_sizes(sheet: Sheet) -> Rectangle:
    draw_sizes(sheet)
    extent, unit, size = sheet.extent, sheet.unit, sheet.text_m
    edge = 1.4 * unit + size
    named = unit + 1.6 * size if sheet.floor.halves else 1.2 * unit
    return Rectangle(extent.left - edge, extent.bottom - edge, extent.right + 1.2 * unit, extent.top + named)


def drawn_hall(sheet: Sheet, seen: HallSeen, around: Rectangle, turned: bool) -> Rectangle:
    """Run-off, names and north arrow of the hall, as it is seen; gives the box that holds them."""
    unit, size = sheet.unit, sheet.text_m
    draw_run_off(sheet, seen)
    name_fixed(sheet, seen)
    edge, right = unit + 1.2 * size, unit + 2.0 * size
    # Beside sides of that name an N would be taken for one of them: there it says that it means the wall.
    word = sheet.wording.say("north wall") if WINDS & {side.name.lower() for side in sheet.game.sides} else "N"
    x, y = around.right + 1.2 * unit + 0.9 * size, around.top - 3.8 * size
    right = max(right, draw_north(sheet, x, y, turned, word) - around.right + unit)
    return Rectangle(around.left - edge, around.bottom - edge, around.right + right, around.top + edge)


def _captions(game: Game, hall: Hall | None, wording: Wording) -> tuple[str, ...]:
    long, wide = (wording.figure(metres) for metres in game.court_m)
    court = wording.say("Court {long} m by {wide} m", long=long, wide=wide)
    return (court, wording.say("in {hall}", hall=hall_words(hall, wording))) if hall else (court,)


def described(
    game: Game, floor: Floor, hall: Hall | None, wording: Wording = ENGLISH, seen: HallSeen | None = None
) -> str:
    """The plan in words, for those who cannot see it."""
    say, number = wording.say, wording.counted
    size = {"long": wording.figure(game.court_m[0]), "wide": wording.figure(game.court_m[1])}
    if floor.halves:
        parts = [say("A court {long} m by {wide} m, {parts} parts.", parts=str(len(floor.halves)), **size)]
    else:
        parts = [say("A court {long} m by {wide} m, in one piece.", **size)]
    for side in game.sides:
        players = number(len(floor.players_of(side.name)), "player", "players")
        parts.append(f"{say('{side}: {players}', side=side_label(wording, side.name), players=players)}.")
    lying = [(len(floor.items_of(line.name)), line) for line in game.kit]
    kit = [number(count, line.name, line.plural) for count, line in lying if count]
    if kit:
        parts.append(say("On the floor: {things}.", things=wording.listed(kit)))
    if floor.areas:
        names = dict.fromkeys(wording.named(area.name) for area in floor.areas)
        parts.append(say("Areas: {names}.", names=wording.listed(names)))
    sheet = Sheet(game, floor, 1.0, wording=wording)
    for throw in shown_throws(sheet):
        skill = wording.listed((wording.known("skill", way.value) or way.value for way in throw.ways), "or")
        far = metres(throw.reach.metres, wording)
        fields = {"skill": skill.capitalize(), "what": goal(sheet, throw), "distance": far}
        parts.append(say("{skill} to {what}: {distance}.", **fields))
    if hall:
        parts.append(say("Hall: {hall}.", hall=hall_words(hall, wording)))
        parts.extend(lines_told(hall, wording))
    if seen:
        parts.extend(f"{words}." for words in intruding(floor, (floor.extent,), seen, wording))
    return " ".join(parts)

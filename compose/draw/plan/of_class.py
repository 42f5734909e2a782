"""A staging → the plan of all its courts, in the hall where there is one."""

from __future__ import annotations

from compose.draw.plan.court import draw_court, draw_tracks
from compose.draw.plan.hall import HallSeen, draw_hall_floor, draw_walls, hall_seen, hall_words, lines_told
from compose.draw.plan.intrusion import hatch_intrusions, intruding, name_intrusions
from compose.draw.plan.plan import described, drawn_hall, finished, on_card, plan_of
from compose.draw.plan.resting import draw_resting, resting_told
from compose.draw.plan.sheet import Sheet, without_throws
from compose.draw.signs.palette import DARK, WHITE
from compose.draw.signs.shapes import Drawing, Label, moved
from compose.draw.signs.symbols import symbol
from compose.draw.units import METRIC, Units
from compose.staging.floor.values import Floor, Rectangle
from compose.staging.staging import Staging
from compose.staging.turned import turned_box
from compose.telling.for_class import courts_said, teams_said
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game


def class_plan(
    game: Game, staging: Staging, units: Units = METRIC, wording: Wording = ENGLISH, letters: float = 1.0
) -> Drawing:
    """The plan of a page of its own; `game` is the game under the title that is to stand there."""
    return _plan(game, staging, "below", letters, units, wording)


def class_plan_on_card(
    game: Game, staging: Staging, units: Units = METRIC, wording: Wording = ENGLISH, large: bool = False
) -> Drawing:
    """The plan as it stands on a card."""
    return _plan(game, staging, *on_card(large), units, wording)


def _plan(game: Game, staging: Staging, legend: str, letters: float, units: Units, wording: Wording) -> Drawing:
    if len(staging.courts) > 1:
        return _courts_plan(game, staging, legend, letters, units, wording)
    hall, court = staging.school_class.hall, staging.court
    return plan_of(
        game,
        court.floor,
        hall,
        court=court.box,
        turned=court.turned,
        resting=staging.teams.resting,
        legend=legend,
        letters=letters,
        units=units,
        wording=wording,
    )


def class_described(game: Game, staging: Staging, wording: Wording = ENGLISH) -> str:
    """The plan in words: one court, and how many there are of it."""
    if len(staging.courts) == 1:
        seen, floor = _hall_around(staging, staging.court.floor), staging.court.floor
        told = described(game, floor, staging.school_class.hall, wording, seen)
        return " ".join((told, *resting_told(staging.teams.resting, wording)))
    of_one = described(game, staging.court.floor, None, wording)
    courts, teams = courts_said(staging, wording), teams_said(staging, wording)
    side_by_side = wording.say("{courts} side by side: {teams}.", courts=courts, teams=teams)
    resting = "".join(f" {line}" for line in resting_told(staging.teams.resting, wording))
    return f"{side_by_side} {wording.say('Each of them:')} {of_one}{_hall_told(staging, wording)}{resting}"


def _hall_told(staging: Staging, wording: Wording) -> str:
    """The hall around several courts, and what of them has no room in it."""
    own, boxes = staging.school_class.hall, _boxes(staging)
    needed = _needed(boxes)
    seen = _hall_around(staging, needed)
    if own is None or seen is None:
        return ""
    told = [wording.say("Hall: {hall}.", hall=hall_words(own, wording)), *lines_told(own, wording)]
    told += [f"{words}." for words in intruding(needed, boxes, seen, wording)]
    return f" {' '.join(told)}"


def _needed(boxes: tuple[Rectangle, ...]) -> Floor:
    """The floor that all courts need together."""
    whole = boxes[0]
    for box in boxes[1:]:
        whole = whole.joined(box)
    return Floor(whole.length, whole.width, (), ())


def _hall_around(staging: Staging, floor: Floor) -> HallSeen | None:
    """The hall around the floor of all courts, with the courts along it."""
    hall, whole = staging.school_class.hall, staging.courts[0].box
    for court in staging.courts[1:]:
        whole = whole.joined(court.box)
    return hall_seen(floor, hall, whole, staging.court.turned) if hall is not None else None


def _boxes(staging: Staging) -> tuple[Rectangle, ...]:
    """The courts with what lies beside them, in the metres of the drawing: from the lowest left corner of all."""
    hall = staging.school_class.hall
    boxes = [court.box for court in staging.courts]
    if hall is not None and staging.court.turned:
        boxes = [turned_box(box, hall.length_m.usual) for box in boxes]
    left, low = min(box.left for box in boxes), min(box.bottom for box in boxes)
    return tuple(box.moved(-left, -low) for box in boxes)


def _courts_plan(game: Game, staging: Staging, legend: str, letters: float, units: Units, wording: Wording) -> Drawing:
    boxes = _boxes(staging)
    needed = _needed(boxes)
    hall, seen = staging.school_class.hall, _hall_around(staging, needed)
    around = needed.extent.joined(seen.walls) if seen else needed.extent
    unit = max(around.length, 1.6 * around.width) / 100
    sheet = Sheet(game, needed, unit, letters, units, wording)
    if seen:
        draw_hall_floor(sheet, seen)
    for number, (court, box) in enumerate(zip(staging.courts, boxes, strict=True), start=1):
        _draw_court(sheet, court.floor, box, number)
    if seen:
        draw_walls(sheet, seen)
        hatch_intrusions(sheet, boxes, seen)
        name_intrusions(sheet, boxes, seen)
    key = Sheet(without_throws(game), staging.court.floor, unit, letters, units, wording, shapes=sheet.shapes)
    captions: tuple[str, ...] = (courts_said(staging, wording), teams_said(staging, wording))
    if hall:
        captions = (*captions, wording.say("in {hall}", hall=hall_words(hall, wording)))
    drawn = drawn_hall(sheet, seen, around, staging.court.turned) if seen else around.grown(1.4 * unit)
    drawn = draw_resting(sheet, drawn, staging.teams.resting)
    words = class_described(game, staging, wording)
    return finished(key, (drawn, around), captions, legend, seen is not None, words)


def _draw_court(sheet: Sheet, floor: Floor, box: Rectangle, number: int) -> None:
    """One court with all that is on it at the start, and its number."""
    own = Sheet(sheet.game, floor, sheet.unit, sheet.letters, sheet.units, sheet.wording)
    draw_court(own)
    draw_tracks(own)
    for item in sorted(floor.items, key=lambda thing: thing.on is not None):
        own.shapes.extend(symbol(item, own.style(item.side), own.least_m, own.ball_kind(item.name)))
    x, y = box.left - floor.extent.left, box.bottom - floor.extent.bottom
    sheet.shapes.extend(moved(shape, x, y) for shape in own.shapes)
    size = min(0.9 * sheet.text_m, 0.5 * box.width)
    at = box.left + 0.4 * size, box.top - 1.1 * size
    sheet.shapes.append(Label(*at, str(number), size, DARK, "start", True, halo=WHITE))
    sheet.clearings.take(box)

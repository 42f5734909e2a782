"""Arrows from where players typically stand to what they aim at, each with its distance in metres."""

from __future__ import annotations

import re
from collections.abc import Iterator

from attrs import evolve

from compose.draw.labelling import gap
from compose.draw.lettering import width_em
from compose.draw.palette import DARK, WHITE
from compose.draw.plan_sheet import Sheet
from compose.draw.shapes import Ink, Label, Point, arrow
from compose.staging.floor.throws import Throw, throws
from compose.staging.floor.values import Rectangle
from compose.telling.french import definite, joined
from compose.telling.wording import ENGLISH, Wording

_WHERE = re.compile(r"(.+) (in|on|behind) (?:the )?(.+)")
MOST = 6  # our choice: more arrows than this hide the floor


def metres(number: float, wording: Wording = ENGLISH) -> str:
    """ "9.9 m": halves round up, as a teacher rounds."""
    shown = f"{number + 1e-6:.1f} m"
    return shown if wording.english else f"{wording.figure(number + 1e-6, 1)}\u00a0m"


def to_what(pattern: str, distance: str, at: str, wording: Wording) -> str:
    """ "9.9 m to lanterns": a distance with what it leads to."""
    if wording.english:
        return wording.say(pattern, distance=distance, what=at)
    return joined(wording.say(pattern, distance=distance, what=goal(at, wording)))


def goal(at: str, wording: Wording) -> str:
    """What a throw goes to, with its article: "the lanterns", "the team-mate on the far bench"."""
    if wording.english:
        return at
    where = _WHERE.fullmatch(at)
    if where is None:
        return definite(wording, at)
    what, preposition, place = where.groups()
    return f"{definite(wording, what)} {wording.known('preposition', preposition)} {definite(wording, place)}"


def shown_throws(sheet: Sheet) -> list[Throw]:
    """One throw of each kind: sides that throw equally far share one, and of more than two sides the first."""
    several = len(sheet.sides) > 2
    found: dict[tuple[str | None, str, str, float], Throw] = {}
    for throw in throws(sheet.game, sheet.floor):
        length = 0.0 if several else round(throw.reach.metres, 2)
        found.setdefault((throw.role, throw.skill, throw.at, length), throw)
    return list(found.values())


def draw_throws(sheet: Sheet) -> None:
    """The arrows of the throws that have two ends, each in a lane of its own."""
    drawn = [throw for throw in shown_throws(sheet) if throw.reach.start and throw.reach.goal][:MOST]
    ink = Ink(stroke=DARK, width_m=0.3 * sheet.unit, dash=(1.1 * sheet.unit, 0.6 * sheet.unit))
    for throw in drawn:
        start, end = _lane(sheet, throw)
        lane = Rectangle(min(start[0], end[0]), min(start[1], end[1]), max(start[0], end[0]), max(start[1], end[1]))
        sheet.shapes.extend(arrow(start, end, 1.7 * sheet.unit, ink))
        sheet.clearings.take(lane.grown(0.3 * sheet.unit))
        inside = sheet.floor.court.grown(-0.3 * sheet.unit)
        figure = metres(throw.reach.metres, sheet.wording)
        whole = to_what("{distance} to {what}", figure, throw.at, sheet.wording)
        for text, least in ((whole, -0.15 * sheet.text_m), (figure, -1000.0)):
            wanted = list(_words(sheet, text, start, end))
            label = sheet.clearings.place(wanted, 0.25 * sheet.unit, inside, least=least)
            if label:
                sheet.shapes.append(label)
                break


def _lane(sheet: Sheet, throw: Throw) -> tuple[Point, Point]:
    """The two ends, moved sideways to where the fewest things lie in the way."""
    start, goal = throw.reach.start, throw.reach.goal
    assert start is not None and goal is not None
    lengthwise = abs(goal[0] - start[0]) >= abs(goal[1] - start[1])
    high = sheet.floor.width_m if lengthwise else sheet.floor.length_m
    anywhere = [high * step / 40 for step in range(2, 39)]
    at_things = _at_things(sheet, throw, goal, lengthwise)

    def ends(place: float) -> tuple[Point, Point]:
        return ((start[0], place), (goal[0], place)) if lengthwise else ((place, start[1]), (place, goal[1]))

    def clear(place: float) -> float:
        low, high = ends(place)
        box = Rectangle(min(low[0], high[0]), min(low[1], high[1]), max(low[0], high[0]), max(low[1], high[1]))
        others = [taken for taken in sheet.clearings.taken if not taken.holds(*high)]
        return min(min((round(gap(box, other), 6) for other in others), default=1000.0), 2.5 * sheet.unit)

    best = max(at_things or anywhere, key=clear)
    if clear(best) < 0:  # somebody stands before each of the things
        best = max((best, *anywhere), key=clear)
    return _shortened(*ends(best), 0.0 if throw.at.endswith("line") else 1.3 * sheet.unit)


def _at_things(sheet: Sheet, throw: Throw, goal: Point, lengthwise: bool) -> list[float]:
    """Where an arrow may run that leads to one of the things aimed at; none for a half, a line, a bench."""
    names = {line.plural: line.name for line in sheet.game.kit}
    items = sheet.floor.items_of(names.get(throw.at, throw.at))
    near = [item for item in items if abs((item.x if lengthwise else item.y) - goal[0 if lengthwise else 1]) < 2]
    return sorted({item.y if lengthwise else item.x for item in near})


def _shortened(start: Point, end: Point, by: float) -> tuple[Point, Point]:
    """The line with its head a little before the thing, so that the thing stays seen."""
    length = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
    part = max(length - by, length / 2) / length if length else 1.0
    return start, (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)


def _words(sheet: Sheet, text: str, start: Point, end: Point) -> Iterator[Label]:
    """Places for the figure along the arrow, above it and below it."""
    size = 0.9 * sheet.text_m
    label = Label(0.0, 0.0, text, size, DARK, "middle", True, halo=WHITE)
    lengthwise = abs(end[0] - start[0]) >= abs(end[1] - start[1])
    long = width_em(text, True) * size / 2 + 0.3 * sheet.unit
    for part in (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82):
        x, y = start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part
        for off in (0.65 * size, -1.25 * size):
            if lengthwise:
                x = min(max(x, sheet.floor.court.left + long), sheet.floor.court.right - long)
                yield evolve(label, x=x, y=y + off)
            else:
                yield evolve(label, x=x - off, y=y, turned=90.0)

"""Arrows from where players typically stand to what they aim at, each with its distance in metres."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.draw.plan.sheet import Sheet
from compose.draw.signs.labelling import gap
from compose.draw.signs.lettering import width_em
from compose.draw.signs.palette import DARK, WHITE
from compose.draw.signs.shapes import Ink, Label, Point, arrow
from compose.staging.floor.throws import Throw, goal_of, place_of, role_of, throws
from compose.staging.floor.values import Rectangle
from compose.staging.resolved import resolved
from compose.telling.french import definite, joined
from compose.telling.wording import ENGLISH, Wording
from grammar.core.play import Aim, Along, AtPlayers, AtThing, Past, PickUp, Through, ToMate
from grammar.core.values import PLAIN, AreaId, Landmark, without_load

MOST = 6  # our choice: more arrows than this hide the floor


def metres(number: float, wording: Wording = ENGLISH) -> str:
    """ "9.9 m": halves round up, as a teacher rounds."""
    shown = f"{number + 1e-6:.1f} m"
    return shown if wording.english else f"{wording.figure(number + 1e-6, 1)}\u00a0m"


def clear_metres(number: float, wording: Wording = ENGLISH) -> str:
    """ "0.85 m": as exactly as a finding says what is clear or in the way, for it is held against a least."""
    shown = float(f"{number:.3g}")
    return f"{shown:g} m" if wording.english else f"{wording.figure(shown)}\u00a0m"


def to_what(pattern: str, distance: str, goal: str, wording: Wording) -> str:
    """ "9.9 m to lanterns": a distance with what it leads to."""
    said = wording.say(pattern, distance=distance, what=goal)
    return said if wording.english else joined(said)


def goal(sheet: Sheet, throw: Throw) -> str:
    """What a throw goes to, in French with its article: "lanterns", "team-mate on the far bench"."""
    wording, (what, place) = sheet.wording, _aimed_at(sheet, throw.aim)
    if wording.english:
        return f"{what} on the {place}" if place else what
    there = f" {wording.known('preposition', 'on')} {definite(wording, place)}" if place else ""
    return f"{definite(wording, what)}{there}"


def _aimed_at(sheet: Sheet, aim: Aim) -> tuple[str, str | None]:
    """What is aimed at in a word, and the place where a team-mate waits."""
    match aim:
        case AtThing() | Through():
            line = sheet.game.kit_named(aim.thing.kind.key)
            return (line.plural if line.count > 1 else line.name), None
        case AtPlayers():
            role = without_load(role_of(aim))
            return "players" if role is PLAIN else role.key, None
        case Past():
            return _place(aim.line.of), None
        case ToMate():
            place = place_of(aim)
            return "team-mate", _place(place) if place else None
        case Along() | PickUp():
            return _place(aim.goal.of), None


def _place(of: Landmark | AreaId) -> str:
    return of.value if isinstance(of, Landmark) else of.key


def shown_throws(sheet: Sheet) -> list[Throw]:
    """One throw of each kind: sides that throw equally far share one, and of more than two sides the first."""
    several = len(sheet.sides) > 2
    found: dict[tuple[object, ...], Throw] = {}
    for throw in throws(resolved(sheet.game), sheet.floor):
        length = "" if several else metres(throw.reach.metres)
        found.setdefault((throw.role, throw.ways, goal_of(throw.aim), length), throw)
    return list(found.values())


def draw_throws(sheet: Sheet) -> None:
    """The arrows of the throws that have two ends, each in a lane of its own."""
    drawn = [throw for throw in shown_throws(sheet) if throw.reach.start and throw.reach.goal][:MOST]
    ink = Ink(stroke=DARK, width_m=0.3 * sheet.unit, dash=(1.1 * sheet.unit, 0.6 * sheet.unit))
    lanes = []
    for throw in drawn:
        start, end = _lane(sheet, throw)
        lane = Rectangle(min(start[0], end[0]), min(start[1], end[1]), max(start[0], end[0]), max(start[1], end[1]))
        sheet.shapes.extend(arrow(start, end, 1.7 * sheet.unit, ink))
        sheet.clearings.take(lane.grown(0.3 * sheet.unit))
        lanes.append((throw, start, end))
    for throw, start, end in lanes:  # once all arrows are there, so that none runs through the words of another
        _named(sheet, throw, start, end)


def _named(sheet: Sheet, throw: Throw, start: Point, end: Point) -> None:
    """The distance of an arrow, with what it leads to where there is room; else the legend says it."""
    inside = sheet.floor.court.grown(-0.3 * sheet.unit)
    figure = metres(throw.reach.metres, sheet.wording)
    whole = to_what("{distance} to {what}", figure, goal(sheet, throw), sheet.wording)
    for text, least in ((whole, -0.15), (figure, -0.2)):
        wanted = list(_words(sheet, text, start, end))
        label = sheet.clearings.place(wanted, 0.25 * sheet.unit, inside, least=least * sheet.text_m)
        if label:
            sheet.shapes.append(label)
            break
    if label is None or text is not whole:
        sheet.told_below.append(throw)


def _lane(sheet: Sheet, throw: Throw) -> tuple[Point, Point]:
    """The two ends, moved sideways to where the fewest things lie in the way."""
    start, end = throw.reach.start, throw.reach.goal
    assert start is not None and end is not None
    lengthwise = abs(end[0] - start[0]) >= abs(end[1] - start[1])
    high = sheet.floor.width_m if lengthwise else sheet.floor.length_m
    anywhere = [high * step / 40 for step in range(2, 39)]
    at_things = _at_things(sheet, throw, end, lengthwise)

    def ends(place: float) -> tuple[Point, Point]:
        return ((start[0], place), (end[0], place)) if lengthwise else ((place, start[1]), (place, end[1]))

    def clear(place: float) -> float:
        low, high = ends(place)
        box = Rectangle(min(low[0], high[0]), min(low[1], high[1]), max(low[0], high[0]), max(low[1], high[1]))
        others = [taken for taken in sheet.clearings.taken if not taken.holds(*high)]
        return min(round(min((gap(box, other) for other in others), default=1000.0), 6), 2.5 * sheet.unit)

    best = max(at_things or anywhere, key=clear)
    if clear(best) < 0:  # somebody stands before each of the things
        best = max((best, *anywhere), key=clear)
    return _shortened(*ends(best), 0.0 if isinstance(throw.aim, Past | Along) else 1.3 * sheet.unit)


def _at_things(sheet: Sheet, throw: Throw, end: Point, lengthwise: bool) -> list[float]:
    """Where an arrow may run that leads to one of the things aimed at; none for a half, a line, a bench."""
    if not isinstance(throw.aim, AtThing | Through):
        return []
    items = sheet.floor.items_of(throw.aim.thing.kind.key)
    near = [item for item in items if abs((item.x if lengthwise else item.y) - end[0 if lengthwise else 1]) < 2]
    return sorted({item.y if lengthwise else item.x for item in near})


def _shortened(start: Point, end: Point, by: float) -> tuple[Point, Point]:
    """The line with its head a little before the thing, so that the thing stays seen."""
    length = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
    part = max(length - by, length / 2) / length if length else 1.0
    return start, (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)


def _words(sheet: Sheet, text: str, start: Point, end: Point) -> Iterator[Label]:
    """Places for the figure along the arrow, above it and below it, and before it."""
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
    if lengthwise:  # before its tail, where arrows lie close beside each other
        ahead = 1 if end[0] > start[0] else -1
        yield evolve(
            label, x=start[0] - 0.4 * ahead * size, y=start[1] - 0.35 * size, anchor="end" if ahead > 0 else "start"
        )

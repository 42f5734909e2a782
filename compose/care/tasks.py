"""Whoever does a task while the play goes on: in the line of fire, or with their eyes off the class."""

from __future__ import annotations

from collections.abc import Iterator

from compose.care.scene import Scene, said_by
from compose.staging.floor.regions import regions
from compose.staging.floor.throws import Throw, throws
from compose.staging.floor.values import Rectangle
from grammar.core.play import AtThing, Fetch, Free, StandUp, Through
from grammar.core.skills import FLYING
from grammar.core.values import TEACHER, SideId, Thing
from grammar.finding import Finding
from grammar.said import Figure, Listed, Named, said


def task_reminders(scene: Scene) -> Iterator[Finding]:
    """Tasks in the line of fire, and tasks that keep the teacher from watching."""
    yield from _standing_up(scene)
    yield from _fetching(scene)
    yield from _too_few_eyes(scene)


def _flying(scene: Scene) -> list[Throw]:
    """Attempts whose ball flies at a thing."""
    every = throws(scene.core, scene.floor)
    return [each for each in every if set(each.ways) & FLYING and isinstance(each.aim, AtThing | Through)]


def _aimed_at(throw: Throw) -> Thing | None:
    return throw.aim.thing if isinstance(throw.aim, AtThing | Through) else None


def _standing_up(scene: Scene) -> Iterator[Finding]:
    aims = {goal.kind for goal in map(_aimed_at, _flying(scene)) if goal is not None}
    found: dict[tuple[str, str], set[int]] = {}
    for service in scene.core.play.services:
        if isinstance(service, StandUp) and service.thing.kind in aims:
            found.setdefault((_who(service), scene.plural(service.thing.kind)), set()).update(service.lines)
    for (who, things), lines in found.items():
        title = said("{who} stands up {things} while balls fly at them.", who=who, things=Named(things))
        yield scene.remind("S-in-fire", title, lines, "Stop the throws with a call until that is done.")


def _fetching(scene: Scene) -> Iterator[Finding]:
    """Balls that are brought from where others fly: on the way to a thing, or a little behind it."""
    fire = list(_lines_of_fire(scene))
    found: dict[str, set[int]] = {}
    for service in scene.core.play.services:
        if isinstance(service, Fetch) and not service.granted:
            places = [region.rectangle for region in regions(scene.ground, service.spot, None)]
            if any(place.overlaps(box) for place in places for box in fire):
                found.setdefault(_who(service), set()).update(service.lines)
    for who, lines in found.items():
        title = said("{who} brings balls back from where others fly.", who=who)
        yield scene.remind("S-in-fire", title, lines, "Fetch on a call, when nobody throws, and look before you bend.")


def _lines_of_fire(scene: Scene) -> Iterator[Rectangle]:
    """For each attempt the floor from the thrower to the things and a little behind them."""
    behind, beside = (scene.read("care fire", name).value for name in ("behind", "beside"))
    for throw in _flying(scene):
        goal = _aimed_at(throw)
        owner = goal.owner.key if goal is not None and isinstance(goal.owner, SideId) else None
        things = [item for item in scene.floor.items_of(goal.kind.key) if item.side == owner] if goal else []
        for item in things:
            start = throw.reach.start or (item.x, item.y)
            way = 1.0 if item.x >= start[0] else -1.0
            ends = Rectangle(item.x, item.y, item.x, item.y).joined(Rectangle(*start, *start))
            beyond = ends.joined(ends.moved(way * behind, 0.0))
            yield Rectangle(beyond.left, beyond.bottom - beside, beyond.right, beyond.top + beside)


def _too_few_eyes(scene: Scene) -> Iterator[Finding]:
    every = scene.core.play.services
    tasks = [each for each in every if isinstance(each, Fetch | StandUp | Free) and each.who is TEACHER]
    doing = [each for each in tasks if isinstance(each, Fetch | StandUp)]
    if not doing:
        return
    reading = scene.read("care eyes", "tasks")
    rates = {each.lines: float(each.per_minute) for each in tasks if each.per_minute is not None}
    often = sum(rates.values())
    does = dict.fromkeys("fetches balls" if isinstance(each, Fetch) else "stands up targets" for each in doing)
    what = Listed(tuple(does))
    title = said("The teacher {what} and has the class to watch, too.", what=what)
    if often > reading.value:
        pattern = "The teacher {what}, {often} tasks a minute in all, and has the class to watch, too."
        title = said(pattern, what=what, often=Figure(often))
    hint = f"Let pupils do it, in turns. More than {reading.value:g} tasks a minute are many. ({said_by(reading)}.)"
    lines = {line for each in doing for line in each.lines}
    yield scene.remind("S-eyes", title, lines, hint, a_minute=often, usual=reading.value)


def _who(service: Fetch | StandUp) -> str:
    return "The teacher" if service.who is TEACHER else "A player"

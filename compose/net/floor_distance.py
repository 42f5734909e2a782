"""How far an attempt goes: from where players typically stand to what they aim at, in metres."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from compose.net.floor_items import OWN_PART, home
from compose.net.floor_regions import Ground, Region, regions
from compose.net.floor_values import Floor, FloorItem, Rectangle
from grammar.game import Game
from grammar.meanings import PlaceMeaning

BACK_M = 1.0  # assumption: who aims stands this far behind the line that must not be crossed
LEAST_M = 1.0  # assumption: nobody aims at a thing nearer than an arm and a step
GRID = 8


def distance_m(
    floor: Floor,
    game: Game,
    *,
    thrower_side: str | None,
    target: str,
    owner_side: str | None,
    place: str | None = None,
    role: str | None = None,
) -> float:
    """The typical distance of an attempt, in metres; never below 1 m.

    `target` is a kit name, or "player", "line", "mate"; `owner_side` is whose it is (None: nobody's or
    anybody's); `place` names the line or the area of a "line" or a "mate". Assumed: who aims comes to
    the front of the floor they may use, 1 m behind its edge and opposite what they aim at; who shares
    that floor with what they aim at is met anywhere on it. A role that aims from a given distance does.
    """
    for known in game.roles:
        if known.name == role and known.distance_m is not None and target != "mate":
            return known.distance_m
    ground = Ground(floor.length_m, floor.width_m, tuple(side.name for side in game.sides), game.halved, floor.areas)
    stand = standing(game, ground, thrower_side, role)
    goals = _goals(floor, game, ground, target=target, owner=owner_side, place=place)
    if target == "mate" and not place:
        return max(LEAST_M, _anywhere(stand, stand))
    if target in ("line", "mate", "player"):
        return max(LEAST_M, min(_reach(stand, goal, target == "player") for goal in goals))
    return max(LEAST_M, _to_things(stand, goals))


def standing(game: Game, ground: Ground, side: str | None, role: str | None = None) -> Rectangle:
    """The floor that players of a side use when they aim: where they stay, less what nobody enters or acts from."""
    if side is None or side not in ground.sides:
        return ground.court
    region, where = home(game, ground, side, role)
    box = region.rectangle if game.halved or where != OWN_PART else ground.court
    for area in ground.areas:
        if {"enters", "acts"} & set(area.forbidden):
            box = box.without(area.rectangle)
    return box


def aim_point(stand: Rectangle, x: float, y: float) -> tuple[float, float]:
    """Where somebody stands who aims at (x, y): opposite it, 1 m behind the front edge (or half the depth)."""
    near_x, near_y = stand.nearest(x, y)
    if near_x != x:
        back = min(BACK_M, stand.length / 2)
        near_x += back if x < stand.left else -back
    elif near_y != y:
        back = min(BACK_M, stand.width / 2)
        near_y += back if y < stand.bottom else -back
    return near_x, near_y


def _goals(
    floor: Floor, game: Game, ground: Ground, *, target: str, owner: str | None, place: str | None
) -> list[Rectangle]:
    if target == "player":
        whose = [owner] if owner else list(ground.sides)
        return [standing(game, ground, side) for side in whose]
    if target in ("line", "mate"):
        return [region.rectangle for region in _lines(game, ground, place or "back line", owner)]
    return [_spot(item) for item in floor.items_of(target, owner) or floor.items_of(target)] or [ground.court]


def _lines(game: Game, ground: Ground, place: str, owner: str | None) -> list[Region]:
    meaning = game.vocabulary.get(place)
    known = meaning.place if isinstance(meaning, PlaceMeaning) else place
    return regions(ground, known, "on", owner, None)


def _spot(item: FloorItem) -> Rectangle:
    return Rectangle(item.x, item.y, item.x, item.y)


def _to_things(stand: Rectangle, goals: list[Rectangle]) -> float:
    """To the mean place of things ahead; things on the same floor are met from anywhere on it."""
    spots = [goal.centre for goal in goals]
    x, y = _mean(point[0] for point in spots), _mean(point[1] for point in spots)
    inside = [point for point in spots if stand.holds(*point, 0.01)]
    if inside:
        return _mean(_anywhere(stand, Rectangle(*point, *point)) for point in spots)
    from_x, from_y = aim_point(stand, x, y)
    return hypot(from_x - x, from_y - y)


def _reach(stand: Rectangle, goal: Rectangle, to_middle: bool) -> float:
    """To a line, a bench (its near edge's middle) or, with `to_middle`, into the middle of a half."""
    if stand.overlaps(goal):
        return _anywhere(stand, goal)
    x, y = goal.centre if to_middle else goal.nearest(*stand.centre)
    from_x, from_y = aim_point(stand, x, y)
    if not to_middle:
        x, y = goal.nearest(from_x, from_y)
    return hypot(from_x - x, from_y - y)


def _anywhere(stand: Rectangle, goal: Rectangle) -> float:
    """The mean distance between points of two floors, over a grid of 8 by 8 cells on each."""
    here, there = _cells(stand), _cells(goal)
    return _mean(hypot(a - c, b - d) for a, b in here for c, d in there)


def _cells(box: Rectangle) -> list[tuple[float, float]]:
    columns = GRID if box.length > 0 else 1
    rows = GRID if box.width > 0 else 1
    return [
        (box.left + box.length * (2 * column + 1) / (2 * columns), box.bottom + box.width * (2 * row + 1) / (2 * rows))
        for column in range(columns)
        for row in range(rows)
    ]


def _mean(numbers: Iterable[float]) -> float:
    every = list(numbers)
    return sum(every) / len(every)

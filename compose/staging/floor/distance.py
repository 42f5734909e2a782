"""How far an attempt goes: from where players typically stand to what they aim at, in metres."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import hypot

from attrs import evolve, frozen

from compose.staging.floor.phrases import OWN_PART, homes
from compose.staging.floor.regions import Ground, regions
from compose.staging.floor.values import Floor, FloorItem, Rectangle
from grammar.game import Game
from grammar.meanings import PlaceMeaning

BACK_M = 1.0  # assumption: who aims stands this far behind the line that must not be crossed
LEAST_M = 1.0  # assumption: nobody aims at a thing nearer than an arm and a step
GRID = 8  # our choice: 8 by 8 cells meet a mean distance within 1 %
Point = tuple[float, float]


@frozen
class Reach:
    """A typical attempt: its length in metres, and from where to where where these are two points."""

    metres: float
    start: Point | None = None
    goal: Point | None = None


def distance_m(
    floor: Floor,
    game: Game,
    *,
    thrower_side: str | None,
    target: str,
    owner_side: str | None,
    place: str | None = None,
    role: str | None = None,
    start: str | None = None,
) -> float:
    """The typical distance of an attempt, in metres; never below 1 m.

    `target` is a kit name, or "player", "line", "mate"; `owner_side` is whose it is (None: nobody's or
    anybody's); `place` names the line or the area of a "line" or a "mate"; `start` names where a carry
    or a run begins. Assumed: who aims comes to the front of the floor they may use, 1 m behind its edge
    and opposite what they aim at; a thing on that floor, or less than 1 m off it, is aimed at from
    anywhere on it. A role that aims from a given distance does.
    """
    return reach_of(
        floor,
        game,
        thrower_side=thrower_side,
        target=target,
        owner_side=owner_side,
        place=place,
        role=role,
        start=start,
    ).metres


def reach_of(
    floor: Floor,
    game: Game,
    *,
    thrower_side: str | None,
    target: str,
    owner_side: str | None,
    place: str | None = None,
    role: str | None = None,
    start: str | None = None,
) -> Reach:
    """The same attempt with its two ends, for drawing."""
    ground = Ground(floor.length_m, floor.width_m, tuple(side.name for side in game.sides), game.halved, floor.areas)
    if start is not None:
        begin = _places(game, ground, start, thrower_side)[0]
        tries = [_between(begin.centre, goal.centre) for goal in _places(game, ground, place or start, owner_side)]
    else:
        stands = standing(game, ground, thrower_side, role)
        tries = list(_tries(floor, game, ground, stands, target=target, owner=owner_side, place=place))
    found = min(tries, key=_length)
    said = next((known.distance_m for known in game.roles if known.name == role and target != "mate"), None)
    return reach_of_length(found, said) if said is not None else _tidy(found)


def _tries(
    floor: Floor,
    game: Game,
    ground: Ground,
    stands: list[Rectangle],
    *,
    target: str,
    owner: str | None,
    place: str | None,
) -> Iterator[Reach]:
    """The attempt from every floor that the thrower may use, to every place that it may go to."""
    items = floor.items_of(target, owner) or floor.items_of(target)
    for stand in stands:
        if target == "mate" and place is None:
            yield Reach(_anywhere(stand, stand))
        elif target == "player":
            for side in (owner,) if owner else ground.sides:
                yield from (_into(stand, goal) for goal in standing(game, ground, side))
        elif target in ("line", "mate"):
            yield from (_onto(stand, goal) for goal in _places(game, ground, place or "back line", owner))
        else:
            yield _to_things(stand, items) if items else _into(stand, ground.court)


def _tidy(reach: Reach) -> Reach:
    """Rounded to a thousandth of a millimetre, so that mirrored sides have equal distances."""
    return evolve(reach, metres=max(LEAST_M, round(reach.metres, 6)))


def _length(reach: Reach) -> float:
    return reach.metres


def reach_of_length(reach: Reach, metres: float) -> Reach:
    """The same attempt from a given distance in metres, on the line between its ends."""
    if reach.start is None or reach.goal is None or reach.metres <= 0:
        return Reach(metres)
    part = metres / reach.metres
    x, y = (to + (at - to) * part for at, to in zip(reach.start, reach.goal, strict=True))
    return Reach(metres, (x, y), reach.goal)


def standing(game: Game, ground: Ground, side: str | None, role: str | None = None) -> list[Rectangle]:
    """The floors that players of a side use when they aim: where they stay, less what nobody enters or acts from."""
    if side is None or side not in ground.sides:
        return [ground.court]
    found, where = homes(game, ground, side, role)
    boxes = [region.rectangle for region in found] if game.halved or where != OWN_PART else [ground.court]
    for area in ground.areas:
        if {"enters", "acts"} & set(area.forbidden):
            boxes = [box.without(area.rectangle) for box in boxes]
    return boxes


def aim_point(stand: Rectangle, x: float, y: float) -> Point:
    """Where somebody stands who aims at (x, y): opposite it, 1 m behind the front edge (or half the depth)."""
    near_x, near_y = stand.nearest(x, y)
    if near_x != x:
        back = min(BACK_M, stand.length / 2)
        near_x += back if x < stand.left else -back
    elif near_y != y:
        back = min(BACK_M, stand.width / 2)
        near_y += back if y < stand.bottom else -back
    return near_x, near_y


def _places(game: Game, ground: Ground, place: str, owner: str | None) -> list[Rectangle]:
    meaning = game.vocabulary.get(place)
    known = meaning.place if isinstance(meaning, PlaceMeaning) else place
    return [region.rectangle for region in regions(ground, known, "on", owner, None)]


def _to_things(stand: Rectangle, items: tuple[FloorItem, ...]) -> Reach:
    """To the mean place of things ahead; things on or at the same floor are aimed at from anywhere on it."""
    if any(stand.distance_m(item.x, item.y) < BACK_M for item in items):
        return Reach(_mean(_anywhere(stand, Rectangle(item.x, item.y, item.x, item.y)) for item in items))
    goal = _mean(item.x for item in items), _mean(item.y for item in items)
    return _between(aim_point(stand, *goal), goal)


def _into(stand: Rectangle, goal: Rectangle) -> Reach:
    """Into the middle of where players are."""
    if stand.overlaps(goal):
        return Reach(_anywhere(stand, goal))
    return _between(aim_point(stand, *goal.centre), goal.centre)


def _onto(stand: Rectangle, goal: Rectangle) -> Reach:
    """To the near edge of a line or an area."""
    if stand.overlaps(goal):
        return Reach(_anywhere(stand, goal))
    start = aim_point(stand, *goal.nearest(*stand.centre))
    return _between(start, goal.nearest(*start))


def _between(start: Point, goal: Point) -> Reach:
    return Reach(hypot(start[0] - goal[0], start[1] - goal[1]), start, goal)


def _anywhere(stand: Rectangle, goal: Rectangle) -> float:
    """The mean distance between points of two floors, over a grid of cells on each."""
    here, there = _cells(stand), _cells(goal)
    return _mean(hypot(a - c, b - d) for a, b in here for c, d in there)


def _cells(box: Rectangle) -> list[Point]:
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

"""How far an attempt goes: from where players typically stand to what they aim at, in metres."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import product
from math import hypot
from typing import assert_never

from compose.staging.floor.ground import Ground, ground_under
from compose.staging.floor.homes import standing
from compose.staging.floor.regions import regions
from compose.staging.floor.tracks import track_on
from compose.staging.floor.values import Floor, Rectangle
from grammar.core.game import Core, Play
from grammar.core.play import Aim, Along, AtPlayers, AtThing, Past, PickUp, Through, ToMate
from grammar.core.values import At, OnStep, Population, SideId, Spot, Thing
from grammar.frozen import evolve, frozen

BACK_M = 1.0  # assumption: who aims stands this far behind the line that must not be crossed
GATHER_M = 3.0  # assumption: at a thing so far off their floor all aim from its front edge
LEAST_M = 1.0  # assumption: nobody aims at a thing nearer than an arm and a step
GRID = 8  # our choice: 8 by 8 cells meet a mean distance within 1 %
Point = tuple[float, float]


@frozen
class Reach:
    """A typical attempt: its length in metres, and from where to where where these are two points."""

    metres: float
    start: Point | None = None
    goal: Point | None = None


def reach(
    floor: Floor,
    core: Core,
    by: Population,
    aim: Aim,
    from_m: Fraction | None = None,
    on: OnStep | None = None,
    waiting: Iterable[Spot] = (),
) -> Reach:
    """A typical attempt; never shorter than 1 m unless a line says so.

    `from_m` is the distance that the line gives; a role that aims from a distance of its own does, but for a pass.
    `on` is where on its track the thing stands now (else where the set-up has it); who is `waiting` somewhere aims
    from there. Assumed: who aims comes to the
    front of the floor they may use, 1 m behind its edge and opposite what they aim at; a thing on that floor is
    aimed at from anywhere on it, and the further off it a thing is, the more of them come to the front.
    """
    ground, play = ground_under(floor, core.play), core.play
    outside: list[Rectangle] = []
    if isinstance(aim, Along) and aim.from_hand:
        goals = (region.rectangle for region in regions(ground, aim.goal, None, by.side))
        ways = (_onto(stand, goal) for stand, goal in product(standing(play, ground, by), goals))
        found = min(ways, key=lambda way: way.metres)
    elif isinstance(aim, Along):
        found = _way(ground, by.side, aim)
    else:
        outside = [region.rectangle for spot in waiting for region in regions(ground, spot, None, by.side)]
        stands = outside or standing(play, ground, by)
        tries = (each for stand in stands for each in _tries(floor, play, ground, by, stand, aim, on))
        found = min(tries, key=lambda each: each.metres)
    role = play.role(by)
    said = from_m
    if said is None and role is not None and not isinstance(aim, ToMate) and not outside:
        said = role.aims_from_m
    return reach_of_length(found, float(said)) if said is not None else _tidy(found)


def _way(ground: Ground, side: SideId, aim: Along) -> Reach:
    """From place to place; from a place to the like of it, where there are two, from one to the other."""
    starts, goals = (regions(ground, spot, None, side) for spot in (aim.start, aim.goal))
    ends = ((start.rectangle, goal.rectangle) for start, goal in product(starts, goals))
    ways = (_between(start.centre, goal.centre) for start, goal in ends if start != goal)
    return min(ways, key=lambda way: way.metres, default=Reach(0.0))


def run_m(reach: Reach, aim: Aim) -> float:
    """How far somebody goes in m: there, and back where they come back."""
    return 2 * reach.metres if isinstance(aim, Along) and aim.back else reach.metres


def _tries(
    floor: Floor,
    play: Play,
    ground: Ground,
    by: Population,
    stand: Rectangle,
    aim: AtThing | AtPlayers | Through | Past | PickUp | ToMate,
    on: OnStep | None,
) -> Iterator[Reach]:
    """The attempt from one floor that the players may use, to every place that it may go to."""
    match aim:
        case AtThing() | Through():
            points = _points(floor, play, ground, aim.thing, on)
            yield _to_things(stand, points) if points else _into(stand, ground.court)
        case AtPlayers():
            yield from (_into(stand, goal) for who in aim.of for goal in standing(play, ground, who))
        case Past():
            yield from (_onto(stand, region.rectangle) for region in regions(ground, aim.line, None, by.side))
        case PickUp():
            yield from (_onto(stand, region.rectangle) for region in regions(ground, aim.start, None, by.side))
        case ToMate():
            for at in aim.at:
                if isinstance(at, At):
                    yield from (_onto(stand, region.rectangle) for region in regions(ground, at.spot, None, by.side))
                elif by in aim.of:
                    yield Reach(_anywhere(stand, stand))
                else:
                    yield from (_into(stand, goal) for who in aim.of for goal in standing(play, ground, who))
        case _:
            assert_never(aim)


def _points(floor: Floor, play: Play, ground: Ground, thing: Thing, on: OnStep | None) -> list[Point]:
    """Where things of one kind and owner are; what only comes to be theirs stands where the set-up has the others."""
    owner = thing.owner.key if isinstance(thing.owner, SideId) else None
    all_of_them = floor.items_of(thing.kind.key)
    items = [item for item in all_of_them if item.side == owner] or all_of_them
    track = next((each for each in play.tracks if on is not None and each.id == on.track), None)
    if track is None or on is None:
        return [(item.x, item.y) for item in items]
    row = track_on(ground, track).row(on.step)
    return [(row.left, item.y) for item in items]


def _tidy(reach: Reach) -> Reach:
    """Rounded to a thousandth of a millimetre, so that mirrored sides have equal distances."""
    return evolve(reach, metres=max(LEAST_M, round(reach.metres, 6)))


def reach_of_length(reach: Reach, metres: float) -> Reach:
    """The same attempt from a given distance in metres, on the line between its ends."""
    if reach.start is None or reach.goal is None or reach.metres <= 0:
        return Reach(metres)
    part = metres / reach.metres
    x, y = (to + (at - to) * part for at, to in zip(reach.start, reach.goal, strict=True))
    return Reach(metres, (x, y), reach.goal)


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


def _to_things(stand: Rectangle, points: Sequence[Point]) -> Reach:
    """To the mean place of things; those on the same floor, or near it, are aimed at from anywhere on it, too."""
    goal = _mean(x for x, _ in points), _mean(y for _, y in points)
    front = _between(aim_point(stand, *goal), goal)
    gathered = min(1.0, min(stand.distance_m(*point) for point in points) / GATHER_M)
    if gathered == 1.0:
        return front
    anywhere = _mean(_anywhere(stand, Rectangle(x, y, x, y)) for x, y in points)
    return Reach(gathered * front.metres + (1.0 - gathered) * anywhere)


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


@lru_cache(maxsize=4096)
def _anywhere(stand: Rectangle, goal: Rectangle) -> float:
    """The mean distance between points of two floors, over a grid of cells on each."""
    here, there = _cells(stand), _cells(goal)
    return _mean(hypot(a - c, b - d) for a, b in here for c, d in there)


@lru_cache(maxsize=256)
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

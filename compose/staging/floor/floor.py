"""The floor of a game: every area and every thing with its place in metres.

This is the only place where places come from: the net, the forecast and the plan all ask here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import chain

from attrs import evolve

from compose.staging.floor.areas import with_areas
from compose.staging.floor.ground import APART_M, Ground, Region, bare_ground
from compose.staging.floor.items import Batch, Muster, Size, kit_batches
from compose.staging.floor.no_room import Short, no_room
from compose.staging.floor.players import PLAYER, player_batches
from compose.staging.floor.spread import room, spread, tries
from compose.staging.floor.tracks import track_on
from compose.staging.floor.values import KEPT_OFF, Floor, FloorArea, FloorItem, Half, Rectangle
from grammar.core.area_kind import AreaKind
from grammar.core.declared import STOOD_ON, Doing
from grammar.core.game import Core, Play
from grammar.core.values import Part, SideId, Spread

# Assumptions: the clear gap between the rims of things, in metres. Players need room to move; kit that
# stands in a row must be told apart; what is heaped "close together" nearly touches.
GAP_M = {"player": 0.3, "ball": 0.1, "target": 0.15, "ring": 0.3, "body": 0.3, "furniture": 0.3}
BESIDE_M = 0.4  # assumption: the gap between a thing and who or what is placed before, behind or beside it
STEPPING = (Spread.RING, Spread.STAGGERED, Spread.TRIANGLE)
NOT_FOR = {"player": KEPT_OFF | {Doing.GUARD}, "ball": KEPT_OFF}  # nobody starts in a place that is shut
SAFE = frozenset({Doing.TOUCH, Doing.HIT})


def floor_of(core: Core, players: Mapping[SideId, int], sizes_m: Mapping[str, Size] | None = None) -> Floor:
    """The floor with so many players on each side.

    `sizes_m` gives width and height in metres by what a thing is like in the library.
    """
    ground, items, short = _laid(core, players, sizes_m or {})

    def fits(line: int, other: Core) -> bool:
        placed = _placed_on(ground_of(other.play), Muster(other, ground_of(other.play), players, sizes_m or {}), [])
        return all(len(each) == batch.count for batch, each in placed if batch.line.number == line)

    problems = (no_room(alike, _measured(alike[0], ground), core, fits) for alike in short)
    halves = tuple(Half(side.key, ground.slice_of(side)) for side in ground.sides) if ground.halved else ()
    tracks = tuple(track_on(ground, track) for track in core.play.tracks)
    return Floor(ground.length_m, ground.width_m, halves, ground.areas, tuple(items), tuple(problems), tracks)


def _laid(
    core: Core, players: Mapping[SideId, int], sizes_m: Mapping[str, Size]
) -> tuple[Ground, list[FloorItem], list[list[Short]]]:
    """All things at their places, and the batches that find none with how many of each were placed, alike ones
    together."""
    ground = ground_of(core.play)
    items: list[FloorItem] = []
    short: dict[tuple[object, ...], list[Short]] = {}
    for batch, placed in _placed_on(ground, Muster(core, ground, players, sizes_m), items):
        if len(placed) < batch.count:
            same = (batch.line.number, batch.count - len(placed), batch.role or batch.name)
            short.setdefault(same, []).append((batch, len(placed)))
    return ground, items, list(short.values())


def _placed_on(ground: Ground, muster: Muster, items: list[FloorItem]) -> Iterator[tuple[Batch, list[FloorItem]]]:
    """Batch by batch what finds a place beside the `items` that lie there already, which grow by it."""
    for batch in chain(kit_batches(muster), player_batches(muster)):
        placed = list(_in_place(batch, items, ground))
        items.extend(placed)
        yield batch, placed


def ground_of(play: Play) -> Ground:
    """The court with its areas, without things or players."""
    return with_areas(play, bare_ground(play))


def _in_place(batch: Batch, items: list[FloorItem], ground: Ground) -> Iterator[FloorItem]:
    if batch.upon is None:
        return _placed(batch, items, ground)
    bases = [item for item in items if item.name == batch.upon.kind.key]
    if batch.upon.part is Part.AT:
        return _stacked(batch, bases, items)
    return _beside(batch, bases, items, ground)


def _item(batch: Batch, order: int, x: float, y: float, near: str | None, on: str | None = None) -> FloorItem:
    """One thing of a batch at a place."""
    side = batch.side.key if batch.side else None
    return FloorItem(batch.name, batch.category, side, x, y, *batch.size_m, batch.first + order, batch.role, near, on)


def _depth(batch: Batch) -> float:
    return _item(batch, 0, 0.0, 0.0, None).box.length


def _gap(batch: Batch) -> float:
    return 0.05 if batch.how is Spread.CLOSE and batch.category != PLAYER else GAP_M[batch.category]


def _kept_out(batch: Batch, ground: Ground) -> list[Rectangle]:
    """Where players and balls may not start, unless they are placed there: areas that nobody enters or acts in, and
    mats on which one is safe."""
    shut = NOT_FOR.get(batch.category, frozenset())
    closed = [area.rectangle for area in ground.areas if area.shut & shut or (shut and _is_safe_mat(area))]
    return [box for box in closed if box != batch.region.rectangle and not _within(batch.region.rectangle, box)]


def _is_safe_mat(area: FloorArea) -> bool:
    return AreaKind(area.kind) in STOOD_ON and bool(area.shut & SAFE)


def _within(inner: Rectangle, outer: Rectangle) -> bool:
    return outer.joined(inner) == outer


def _open_region(batch: Batch, ground: Ground) -> Region:
    box = batch.region.rectangle
    for strip in _kept_out(batch, ground):
        box = box.without(strip)
    return evolve(batch.region, rectangle=box)


def _placed(batch: Batch, items: list[FloorItem], ground: Ground) -> Iterator[FloorItem]:
    """Each thing at the place its pattern wants, or at the nearest free one."""
    size, gap = batch.size_m[0], _gap(batch)
    region = _open_region(batch, ground)
    bounds = room(region, size, _depth(batch), ground.court)
    if bounds is None:
        return
    if batch.region.line:
        region = evolve(region, rectangle=_line_at(bounds, region))
        bounds = _with_steps(bounds, batch, ground)
    shut = _kept_out(batch, ground)
    near = region.side.key if region.side else None
    mine: list[FloorItem] = []
    points, _missing = spread(region, batch.count, size, gap, batch.how)
    for order, point in enumerate(points):
        laid = (_item(batch, order, x, y, near) for x, y in tries(point, bounds, batch.region.facing))
        item = _first_free(laid, batch, items, mine, shut)
        if item is not None:
            mine.append(item)
            yield item


def _first_free(
    laid: Iterator[FloorItem], batch: Batch, items: list[FloorItem], mine: list[FloorItem], shut: list[Rectangle]
) -> FloorItem | None:
    """The first place where floor is free; without any the first where it lies in a heap with things of its sort."""
    firm = [item for item in items if item.name not in batch.heap] if batch.heap else items
    heaped = None
    for item in laid:
        if _free(item, items, mine, _gap(batch), shut):
            return item
        if heaped is None and batch.heap and _free(item, firm, [], 0.0, shut):
            heaped = item
    return heaped


def _line_at(bounds: Rectangle, region: Region) -> Rectangle:
    """The line through the middles of things on it, over its whole length."""
    box = region.rectangle
    if region.line == "across":
        return Rectangle(bounds.left, box.bottom, bounds.left, box.top)
    return Rectangle(box.left, bounds.bottom, box.right, bounds.bottom)


def _with_steps(bounds: Rectangle, batch: Batch, ground: Ground) -> Rectangle:
    """A line's pattern may step into the court; a plain row may not."""
    if batch.how not in STEPPING:
        return bounds
    deep = max(ground.length_m, ground.width_m)
    inner = ground.court.grown(-batch.size_m[0] / 2)
    if batch.region.line == "across":
        ahead = bounds.left + batch.region.facing * deep
        return Rectangle(
            max(min(bounds.left, ahead), inner.left),
            bounds.bottom,
            min(max(bounds.left, ahead), inner.right),
            bounds.top,
        )
    return Rectangle(bounds.left, inner.bottom, bounds.right, inner.top)


def _free(item: FloorItem, others: list[FloorItem], mine: list[FloorItem], gap: float, shut: list[Rectangle]) -> bool:
    return (
        _apart(item, others, APART_M - 1e-9)
        and _apart(item, mine, gap - 1e-9)
        and all(box.distance_m(item.x, item.y) >= item.radius - 1e-9 for box in shut)
    )


def _apart(item: FloorItem, others: list[FloorItem], gap_m: float) -> bool:
    """Whether so much lies between a thing and all others; most lie so far off that a glance is enough."""
    x, y, far = item.x, item.y, item.width_m / 2 + gap_m + 1e-6  # no thing is deeper than it is wide
    for other in others:
        reach = far + other.width_m / 2
        if -reach <= other.y - y <= reach and -reach <= other.x - x <= reach and item.clear_of(other) < gap_m:
            return False
    return True


def _stacked(batch: Batch, bases: list[FloorItem], items: list[FloorItem]) -> Iterator[FloorItem]:
    """Things laid upon other things, one on each."""
    taken = {(item.x, item.y) for item in items if item.on}
    own = [base for base in bases if batch.side is None or batch.side.key == base.side]
    free = [base for base in own if (base.x, base.y) not in taken]
    for order, base in enumerate(free[: batch.count]):
        yield _item(batch, order, base.x, base.y, base.near, base.name)


def _beside(batch: Batch, bases: list[FloorItem], items: list[FloorItem], ground: Ground) -> Iterator[FloorItem]:
    """Things before (towards the middle of the court), behind or beside other things, in turn; fewer than these are
    spread over all of them."""
    assert batch.upon is not None
    own = [base for base in bases if batch.side is None or batch.side.key == base.side] or bases
    within = batch.region.rectangle.grown(2.0 if batch.upon.part is Part.BEHIND else -batch.size_m[0] / 2)
    shut = _kept_out(batch, ground) if batch.category == PLAYER else []
    mine: list[FloorItem] = []
    for order in range(batch.count if own else 0):
        base = own[max(order, (2 * order + 1) * len(own) // (2 * batch.count)) % len(own)]
        facing = 1 if base.x < ground.length_m / 2 else -1
        off = base.radius + batch.size_m[0] / 2 + BESIDE_M
        wanted = {Part.BEFORE: (base.x + facing * off, base.y), Part.BEHIND: (base.x - facing * off, base.y)}
        around = tries(wanted.get(batch.upon.part, (base.x, base.y + off)), within, facing)
        item = _first_free((_item(batch, order, x, y, base.near) for x, y in around), batch, items, mine, shut)
        if item is not None:
            mine.append(item)
            yield item


def _measured(short: Short, ground: Ground) -> float:
    """How much longer or wider the place would have to be, in metres."""
    batch, placed = short
    region = _open_region(batch, ground)
    _points, missing = spread(region, batch.count, batch.size_m[0], _gap(batch), batch.how)
    if not region.line:
        missing = max(missing, batch.size_m[0] - min(region.rectangle.length, region.rectangle.width))
    return missing if missing > 0 else (batch.count - placed) * (batch.size_m[0] + _gap(batch))

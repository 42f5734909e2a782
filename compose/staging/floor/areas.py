"""The named areas of a game laid out on its court."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil, sqrt

from attrs import evolve

from compose.staging.floor.ground import GAP_M, Ground, Region
from compose.staging.floor.regions import everywhere, regions
from compose.staging.floor.spread import spread
from compose.staging.floor.values import FloorArea, Rectangle
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Area
from grammar.core.game import Play
from grammar.core.values import SHARED, Landmark, Part, Population, SideId, Spot

# Assumptions: how deep an area is where the sheet does not say. A bench is as deep as a gym bench with
# the legs of those who sit on it; pupils queue one behind the other on a strip of 1 m.
USUAL_DEPTH_M = {
    AreaKind.STRIP: 2.0,
    AreaKind.ZONE: 2.0,
    AreaKind.BENCH: 0.6,
    AreaKind.QUEUE: 1.0,
    AreaKind.BASE: 1.5,
    AreaKind.CIRCLE: 3.0,
    AreaKind.MARK: 0.5,
}
COMPACT = (AreaKind.BASE, AreaKind.CIRCLE, AreaKind.MARK)
AROUND_M = 1.0  # assumption: what lies around a place reaches a step farther than the place itself
LONG = (Part.ACROSS, Part.ALONG)
BENCH_M = 3.5  # as long as a gym bench usually is (library/kit/furniture.toml)
SEAT_M = 0.8  # assumption: a pupil on a bench, with the gap to the next


def with_areas(play: Play, ground: Ground) -> Ground:
    """The ground with every area of the sheet on it, in the order of the sheet."""
    for area in play.areas:
        laid = [*ground.areas]
        owner = area.owner.key if isinstance(area.owner, SideId) else None
        out = frozenset(who for who in play.populations() if area.keeps_out(who))
        for region in _regions_of(area, ground, benches_in(play, area)):
            box = outermost(region.rectangle, [other.rectangle for other in laid], ground.court)
            laid.append(FloorArea(area.id.key, area.kind.value, owner, box, area.shut, out))
        ground = evolve(ground, areas=tuple(laid))
    return ground


def benches_in(play: Play, area: Area) -> int:
    """How many benches stand in one place that is a bench: one, or as many as those need who sit there at the start."""
    sitting = sum(
        start.count
        for start in play.starts
        if isinstance(start.at, Spot) and start.at.of == area.id and start.at.owner == area.owner
        if isinstance(start.what, Population) and isinstance(start.count, int)
    )
    return max(1, ceil(sitting / area.places * SEAT_M / BENCH_M))


def _as_long(region: Region, long_m: float) -> Region:
    """The middle of a stretch, so long along its longer way."""
    box = region.rectangle
    off_x, off_y = max(0.0, box.length - long_m) / 2, max(0.0, box.width - long_m) / 2
    if box.length < box.width:
        return evolve(region, rectangle=evolve(box, bottom=box.bottom + off_y, top=box.top - off_y))
    return evolve(region, rectangle=evolve(box, left=box.left + off_x, right=box.right - off_x))


def _regions_of(area: Area, ground: Ground, benches: int) -> list[Region]:
    depth_m = float(area.depth_m) if area.depth_m is not None else USUAL_DEPTH_M[area.kind]
    lies = area.lies
    if lies.part is Part.AROUND and not isinstance(lies.of, Landmark):
        reaching_m = float(area.depth_m) if area.depth_m is not None else AROUND_M
        return list(regions(ground, lies, reaching_m))
    if area.kind is AreaKind.STRIP and lies.of is Landmark.MIDDLE and lies.part is Part.AT:
        lies = evolve(lies, part=Part.ACROSS)  # a strip is as long as the court is wide
    if area.places > 1 and lies.of in (Landmark.COURT, Landmark.HALF):
        return [island for region in regions(ground, lies) for island in _spread(region, area.places, depth_m)]
    found = list(everywhere(ground, lies, depth_m) if area.places > 1 else regions(ground, lies, depth_m))
    if area.kind in COMPACT and lies.part not in LONG:
        found = [evolve(region, rectangle=_compact(region.rectangle, depth_m)) for region in found]
    if area.kind is AreaKind.BENCH and area.owner is SHARED:
        found = [_as_long(region, benches * BENCH_M) for region in found]
    if lies.of is Landmark.HALF and lies.part is Part.BESIDE:
        found = [_on_own_side(region, ground) for region in found]
    return found


def _spread(region: Region, places: int, size_m: float) -> Iterator[Region]:
    """Squares of that size evenly over a stretch of floor, none larger than its share of it."""
    size_m = min(size_m, sqrt(region.rectangle.length * region.rectangle.width / places))
    for x, y in spread(region, places, size_m, GAP_M, None)[0]:
        yield evolve(region, rectangle=_compact(Rectangle(x, y, x, y), size_m))


def _compact(box: Rectangle, size_m: float) -> Rectangle:
    """A base, a circle or a mark is as wide as it is deep, in the middle of its stretch."""
    x, y = box.centre
    half_x, half_y = min(size_m, box.length or size_m) / 2, min(size_m, box.width or size_m) / 2
    return Rectangle(x - half_x, y - half_y, x + half_x, y + half_y)


def _on_own_side(region: Region, ground: Ground) -> Region:
    """Queues beside two halves stand on one side of the hall, a gap apart, so that nobody mixes them up."""
    box = region.rectangle
    inner = GAP_M if len(ground.sides) > 1 else 0.0
    return evolve(region, rectangle=evolve(box, left=box.left + inner, right=box.right - inner))


def outermost(rectangle: Rectangle, taken: Sequence[Rectangle], court: Rectangle) -> Rectangle:
    """The rectangle moved outwards, away from the court, until it is clear of those taken; inside it stays."""
    if rectangle.overlaps(court):
        return rectangle
    by_x = (rectangle.left >= court.right) - (rectangle.right <= court.left)
    by_y = 0 if by_x else (rectangle.bottom >= court.top) - (rectangle.top <= court.bottom)
    for box in sorted(taken, key=lambda other: by_x * other.centre[0] + by_y * other.centre[1]):
        if rectangle.overlaps(box):
            out_x = (box.right - rectangle.left if by_x > 0 else box.left - rectangle.right) if by_x else 0.0
            out_y = (box.top - rectangle.bottom if by_y > 0 else box.bottom - rectangle.top) if by_y else 0.0
            rectangle = rectangle.moved(out_x + by_x * GAP_M, out_y + by_y * GAP_M)
    return rectangle

"""The named areas of a game laid out on its court."""

from __future__ import annotations

from attrs import evolve

from compose.staging.floor.regions import ACROSS, GAP_M, Ground, Region, outermost, regions
from compose.staging.floor.values import FloorArea, Rectangle
from grammar.game import Game, GameArea

# Assumptions: how deep an area is where the sheet does not say. A bench is as deep as a gym bench with
# the legs of those who sit on it; pupils queue one behind the other on a strip of 1 m.
USUAL_DEPTH_M = {"strip": 2.0, "zone": 2.0, "bench": 0.6, "queue": 1.0, "base": 1.5, "circle": 3.0, "mark": 0.5}
OUTSIDE = ("bench", "queue")
COMPACT = ("base", "circle", "mark")


def with_areas(game: Game, ground: Ground) -> Ground:
    """The ground with every area of the sheet on it, in the order of the sheet."""
    for area in game.areas:
        laid = [*ground.areas]
        for region in _regions_of(area, ground):
            box = outermost(region.rectangle, [other.rectangle for other in laid], ground.court)
            laid.append(FloorArea(area.name, area.kind, _owner(area, region, ground), box, area.forbidden))
        ground = evolve(ground, areas=tuple(laid))
    return ground


def _owner(area: GameArea, region: Region, ground: Ground) -> str | None:
    """Whose area it is. A "far bench" lies at the other end from the side that it belongs to."""
    if not area.each or region.side is None:
        return None
    if area.name.startswith("far ") and len(ground.sides) == 2:
        return next(side for side in ground.sides if side != region.side)
    return region.side


def _regions_of(area: GameArea, ground: Ground) -> list[Region]:
    depth = area.depth_m or USUAL_DEPTH_M[area.kind]
    preposition = area.preposition
    if area.kind in OUTSIDE and area.spot in ("back line", "side line", "wall", "half", "court"):
        # A bench or a queue "on", "along" or "in" a place would be in the way of play: it lies outside.
        preposition = {"before": "before", "beside": "beside"}.get(preposition, "behind")
        if preposition == "behind" and area.spot == "court":
            preposition = "beside"
    elif area.kind not in COMPACT and area.spot == "middle":
        return [_across_middle(ground, depth)]
    found = regions(ground, area.spot, preposition, None, depth)
    if not area.each and area.spot in ("back line", "side line", "half", "corner", "wall"):
        found = found[:1]
    if area.kind in COMPACT and preposition not in ACROSS:
        found = [evolve(region, rectangle=_compact(region.rectangle, depth)) for region in found]
    if area.kind in OUTSIDE and area.spot == "half" and preposition == "beside":
        found = [_on_own_side(region, ground) for region in found]
    return found


def _across_middle(ground: Ground, depth: float) -> Region:
    middle = ground.length_m / 2
    return Region(Rectangle(middle - depth / 2, 0.0, middle + depth / 2, ground.width_m))


def _compact(box: Rectangle, size: float) -> Rectangle:
    """A base, a circle or a mark is as wide as it is deep, in the middle of its stretch."""
    x, y = box.centre
    half_x, half_y = min(size, box.length or size) / 2, min(size, box.width or size) / 2
    return Rectangle(x - half_x, y - half_y, x + half_x, y + half_y)


def _on_own_side(region: Region, ground: Ground) -> Region:
    """Queues beside two halves stand on one side of the hall, a gap apart, so that nobody mixes them up."""
    box = region.rectangle
    inner = GAP_M if len(ground.sides) > 1 else 0.0
    return evolve(region, rectangle=evolve(box, left=box.left + inner, right=box.right - inner))

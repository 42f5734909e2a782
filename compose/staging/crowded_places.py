"""Places for which a court has become too small: on a larger one they lie apart, or wholly on it.

Only places that exclude one another need floor of their own; one may lie in another, as it is told."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.values import FloorArea, Rectangle
from compose.staging.found import warning
from compose.staging.resolved import resolved
from compose.staging.where import of_areas, of_court
from grammar.core.area_kind import AreaKind
from grammar.core.declared import Doing
from grammar.core.game import Play
from grammar.core.play import Home
from grammar.core.values import AreaId, Population, SideId
from grammar.finding import Finding
from grammar.frozen import evolve
from grammar.game import Game
from grammar.said import Figure, Named, said

LARGER = 8  # our choice: what lies over another place on a court so many times as long and wide is meant to
OVER_OTHER = "The {place} and the {other} lie {deep} m over each other: the court is too small for both."
OVER_ITS_LIKE = "The places called {place} lie {deep} m over each other: the court is too small for them."
OFF_COURT = "The {place} reaches {deep} m over the edge of the court: the court is too small for it."
HINT = "Make the court larger, or the places on it less deep or fewer."

OPEN = tuple(kind.value for kind in (AreaKind.STRIP, AreaKind.ZONE, AreaKind.BASE, AreaKind.CIRCLE))  # floor to run on

Crossing = tuple[str, int, int]  # what is crossed, and by which areas, as they are numbered on the ground


def crowded_places(game: Game) -> Iterator[Finding]:
    """A finding for each two places, or one and the court's edge, that only a small court brings together, with how
    far."""
    play = resolved(game).play
    ground = ground_of(play)
    crossing = _crossing(play, ground)
    meant = _crossing(play, ground_of(_larger(play))) if crossing else {}
    deepest: dict[tuple[str, str, str], float] = {}
    for pattern, one, other in crossing.keys() - meant.keys():
        key = pattern, ground.areas[one].name, ground.areas[other].name
        deepest[key] = max(crossing[pattern, one, other], deepest.get(key, 0.0))
    for key, deep in sorted(deepest.items()):
        pattern, place, beside = key
        title = said(pattern, place=Named(place), other=Named(beside), deep=Figure(deep, ".2g"))
        found = warning("F-crowded", title, of_court(game), HINT, short_m=deep)
        yield evolve(found, others=of_areas(game, {place, beside}))


def _larger(play: Play) -> Play:
    court = play.court
    return evolve(play, court=evolve(court, length_m=court.length_m * LARGER, width_m=court.width_m * LARGER))


def _crossing(play: Play, ground: Ground) -> dict[Crossing, float]:
    """All that places of a court cross which they may not, and by how many metres."""
    found: dict[Crossing, float] = {}
    for number, area in enumerate(ground.areas):
        found[OFF_COURT, number, number] = _beyond(area.rectangle, ground.court)
    for (one, first), (other, second) in combinations(enumerate(ground.areas), 2):
        if first.name == second.name:
            found[OVER_ITS_LIKE, one, other] = _shared(first.rectangle, second.rectangle)
        elif _exclude(play, first, second):
            found[OVER_OTHER, one, other] = _shared(first.rectangle, second.rectangle)
    return {key: deep for key, deep in found.items() if deep > 1e-6}


def _exclude(play: Play, one: FloorArea, other: FloorArea) -> bool:
    """Whether two places want floor of their own: where somebody waits or sits, where nobody goes who goes into the
    other, or where those stay who are apart from those of the other. A safe mat may lie in the zone of who touches."""
    if one.kind not in OPEN or other.kind not in OPEN:
        return True
    homes = [{home.who for home in play.homes if _is_home(home, area)} for area in (one, other)]
    apart = bool(homes[0]) and bool(homes[1]) and homes[0].isdisjoint(homes[1])
    return apart or _entering(play, one).isdisjoint(_entering(play, other))


def _is_home(home: Home, area: FloorArea) -> bool:
    owner = home.at.owner
    return isinstance(home.at.of, AreaId) and (home.at.of.key, owner.key if isinstance(owner, SideId) else None) == (
        area.name,
        area.owner,
    )


def _entering(play: Play, area: FloorArea) -> frozenset[Population]:
    return frozenset() if Doing.ENTER in area.shut else frozenset(play.populations()) - area.out


def _shared(one: Rectangle, other: Rectangle) -> float:
    """How far two places would have to move apart."""
    if not one.overlaps(other):
        return 0.0
    along = min(one.right, other.right) - max(one.left, other.left)
    return min(along, min(one.top, other.top) - max(one.bottom, other.bottom))


def _beyond(box: Rectangle, floor: Rectangle) -> float:
    """How far a place that lies on a floor reaches over its edge."""
    over = floor.left - box.left, box.right - floor.right, floor.bottom - box.bottom, box.top - floor.top
    return max(0.0, *over) if box.overlaps(floor) else 0.0

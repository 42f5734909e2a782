"""Places for which a court has become too small: on a larger one they lie apart, or wholly on it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from compose.staging.floor.floor import ground_of
from compose.staging.floor.ground import Ground
from compose.staging.floor.values import Rectangle
from compose.staging.found import warning
from compose.staging.resolved import resolved
from compose.staging.where import of_areas, of_court
from grammar.core.game import Play
from grammar.finding import Finding
from grammar.frozen import evolve
from grammar.game import Game
from grammar.said import Figure, Named, said

LARGER = 8  # our choice: what lies over another place on a court so many times as long and wide is meant to
OVER_OTHER = "The {place} and the {other} lie {deep} m over each other: the court is too small for both."
OVER_ITS_LIKE = "The places called {place} lie {deep} m over each other: the court is too small for them."
OFF_COURT = "The {place} reaches {deep} m over the edge of the court: the court is too small for it."
HINT = "Make the court larger, or the places on it less deep or fewer."

Crossing = tuple[str, int, int]  # what is crossed, and by which areas, as they are numbered on the ground


def crowded_places(game: Game) -> Iterator[Finding]:
    """A finding for each two places, or one and the court's edge, that only a small court brings together, with how
    far."""
    play = resolved(game).play
    ground = ground_of(play)
    crossing = _crossing(ground)
    meant = _crossing(ground_of(_larger(play))) if crossing else {}
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


def _crossing(ground: Ground) -> dict[Crossing, float]:
    """All that places of a court cross, and by how many metres."""
    found: dict[Crossing, float] = {}
    for number, area in enumerate(ground.areas):
        found[OFF_COURT, number, number] = _beyond(area.rectangle, ground.court)
    for (one, first), (other, second) in combinations(enumerate(ground.areas), 2):
        pattern = OVER_ITS_LIKE if first.name == second.name else OVER_OTHER
        found[pattern, one, other] = _shared(first.rectangle, second.rectangle)
    return {key: deep for key, deep in found.items() if deep > 1e-6}


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

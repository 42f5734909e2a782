"""Where balls come to lie that rest somewhere in a half, or on the court, besides there; amounts as `landings` of the
net takes them: on the floor by how much of it an area covers, off it half of those sent that way."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.landings import FLYING, LEAST, LINES
from compose.net.lower.whereabouts import places_of_players, reached_in_play
from compose.staging.floor.floor import ground_of
from compose.staging.floor.regions import regions
from compose.telling.granted import rests_left
from grammar.core.declared import Doing
from grammar.core.game import Play
from grammar.core.values import AreaId, KindId, Spot

Left = tuple[frozenset[KindId], frozenset[Spot]]


def balls_left(play: Play) -> tuple[list[Left], list[Left]]:
    """Balls with the areas of the floor, and with the places off it, where some of them stop."""
    spread = {kind for rest in rests_left(play) if rest.spreads and rest.results & set(FLYING) for kind in rest.balls}
    on_floor: dict[frozenset[Spot], set[KindId]] = {}
    off_floor: dict[frozenset[Spot], set[KindId]] = {}
    for kind in sorted(spread):
        waited_in = set(_waited_in(play, kind))
        unfetched = {each.spot for each in play.unfetched if each.ball == kind}
        shut = {Spot(area.id, area.owner) for area in play.areas if Doing.ENTER in area.shut}
        areas = waited_in | {spot for spot in unfetched | shut if isinstance(spot.of, AreaId)}
        floor = frozenset(spot for spot in areas if _on_the_floor(play, spot))
        beyond = frozenset(waited_in - floor) | {spot for spot in unfetched if spot.of in LINES}
        on_floor.setdefault(floor, set()).add(kind)
        off_floor.setdefault(beyond, set()).add(kind)
    return _pairs(on_floor), _pairs(off_floor)


def _pairs(found: dict[frozenset[Spot], set[KindId]]) -> list[Left]:
    return [(frozenset(kinds), spots) for spots, kinds in found.items() if spots]


def _waited_in(play: Play, kind: KindId) -> Iterator[Spot]:
    """Where players wait who may send such balls from there."""
    reached = reached_in_play(play, places_of_players(play))
    for offer in play.offers:
        if any(each.ball == kind for each in offer.attempts):
            yield from (spot for spot in offer.at if (offer.by, spot) not in reached)


def _on_the_floor(play: Play, spot: Spot) -> bool:
    ground = ground_of(play)
    return any(
        region.rectangle.common_m2(ground.court) > LEAST for region in regions(ground, spot, None, play.side_ids[0])
    )

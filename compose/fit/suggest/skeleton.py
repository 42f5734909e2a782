"""What of a game its net hangs on, without what only changes chances, times and distances.

Two games of one skeleton have nets of one shape, so every finding about one holds of the other: sizes,
distances, paces and factors change numbers, never what can happen, but where players have no floor left or a
thing is out of reach; that is told apart. Tested on every modifier of the library with every game.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from fractions import Fraction

from attrs import evolve

from compose.net.lower.doubts import doubts
from compose.staging.floor.nowhere import nowhere_to_act
from compose.staging.resolved import resolved
from grammar.core.declared import Court, Kind, Odd, Organisation, Start
from grammar.core.game import Play
from grammar.core.play import ComeBack, Offer, Service
from grammar.core.values import SHARED, CatalogueId, Landmark, Sort, Spot, Thing
from grammar.game import Game

_SOME = Fraction(1)  # a length, a time, a size, whatever it is
_SOMEWHERE = Spot(Landmark.MIDDLE, SHARED)
_AIMED_AT = (Sort.TARGET, Sort.RING, Sort.FURNITURE)


def skeleton(game: Game, players: Mapping[str, int]) -> Hashable:
    """Equal for all games whose nets have the same shape with these players."""
    core = resolved(game)
    said = (*nowhere_to_act(core), *doubts(core))
    return tuple(players.items()), _without_numbers(core.play), tuple((each.code, each.title) for each in said)


def _without_numbers(play: Play) -> Play:
    return evolve(
        play,
        court=Court(_SOME, _SOME, play.court.cut),
        organisation=Organisation(1, Odd.UNSAID),
        factors=(),
        guarding=(),
        bell=evolve(play.bell, after_s=_SOME) if play.bell else None,
        match=evolve(
            play.match, rounds=min(play.match.rounds, 2), ends_after_each_round=False, ends_at_half_time=False
        ),
        choices=tuple(evolve(each, hanging=()) for each in play.choices),
        areas=tuple(evolve(each, depth_m=None) for each in play.areas),
        roles=tuple(evolve(each, aims_from_m=None) for each in play.roles),
        kinds=tuple(_kind(each) for each in play.kinds),
        starts=tuple(_start(play, each) for each in play.starts),
        offers=tuple(_offer(each) for each in play.offers),
        services=tuple(_service(each) for each in play.services),
        holds=tuple(evolve(each, limit_s=_SOME) for each in play.holds),
    )


def _kind(kind: Kind) -> Kind:
    """What sort of thing it is, in the place of which thing of that sort."""
    return evolve(kind, like=CatalogueId(kind.sort.value), scale=_SOME)


def _start(play: Play, start: Start) -> Start:
    """Where targets stand changes distances only, but where an area is counted; where balls and players are
    changes what can happen."""
    aimed_at = isinstance(start.what, Thing) and play.kind(start.what.kind).sort in _AIMED_AT
    on_floor = isinstance(start.at, Spot) and isinstance(start.at.of, Landmark)
    return evolve(start, at=_SOMEWHERE if aimed_at and on_floor else start.at, spread=None, on_middle_line=False)


def _offer(offer: Offer) -> Offer:
    return evolve(offer, figures=evolve(offer.figures, from_m=None, per_minute=None))


def _service(service: Service) -> Service:
    if isinstance(service, ComeBack):
        return service if service.after_s is None else evolve(service, after_s=_SOME)
    return evolve(service, per_minute=None)

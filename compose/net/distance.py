"""The distance of an attempt that is still told in names; it goes when the net is made from the core."""

from __future__ import annotations

from compose.staging.floor.distance import distance_m as distance_of
from compose.staging.floor.throws import place_of
from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from grammar.core.game import Play
from grammar.core.play import Aim, Along, AtPlayers, AtThing, Past, ToMate
from grammar.core.values import (
    OF_A_SIDE,
    PLAIN,
    SHARED,
    AreaId,
    KindId,
    Landmark,
    Owner,
    Population,
    RoleId,
    SideId,
    Spot,
    Thing,
)
from grammar.game import Game


def distance_m(
    floor: Floor,
    game: Game,
    *,
    thrower_side: str,
    target: str,
    owner_side: str | None,
    place: str | None = None,
    role: str | None = None,
    start: str | None = None,
) -> float:
    """The typical distance in metres; `target` is a kit name, or "player", "line", "mate"."""
    core = resolved(game)
    by = Population(SideId(thrower_side), RoleId(role) if role else PLAIN)
    owner = SideId(owner_side) if owner_side else by.side
    if start is not None:
        aim: Aim = Along(_spot(core.play, start, by.side), _spot(core.play, place or start, owner), start == place)
    elif target == "player":
        aim = AtPlayers(frozenset({Population(owner, PLAIN)}))
    elif target == "mate":
        of = _spot(core.play, place, by.side).of if place else None
        mates = (attempt.aim for offer in core.play.offers if offer.by.side == by.side for attempt in offer.attempts)
        aim = next(each for each in mates if isinstance(each, ToMate) and place_of(each) == of)
    elif target == "line":
        aim = Past(_spot(core.play, place or "back line", owner))
    else:
        kind = KindId(target)
        owners: list[Owner] = [thing.owner for thing in core.play.things(kind)]
        aim = AtThing(Thing(kind, owner if owner in owners or not owners else owners[0]))
    return distance_of(floor, core, by, aim)


def _spot(play: Play, name: str, side: SideId) -> Spot:
    named = [area for area in play.areas if area.id == AreaId(name)]
    if named:
        return Spot(named[0].id, side if any(area.owner == side for area in named) else named[0].owner)
    landmark = Landmark(name)
    return Spot(landmark, side if landmark in OF_A_SIDE else SHARED)

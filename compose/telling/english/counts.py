"""Conditions of the core: "south has no lanterns standing"."""

from __future__ import annotations

from fractions import Fraction

from compose.net.net import Net
from compose.telling.english.places import lying, plural_of, standing_words
from compose.telling.sides import does
from grammar.core.guards import (
    BallsAt,
    Clock,
    Compare,
    Count,
    Every,
    Guard,
    PlayersAt,
    Points,
    Relation,
    Taken,
    ThingsAt,
    Whole,
)
from grammar.core.values import (
    PLAIN,
    SHARED,
    AreaId,
    At,
    OnStep,
    Posture,
    SideId,
    Spot,
    without_load,
)
from grammar.words import listing, plural


def guard_words(net: Net, guard: Guard, speaking: SideId | None = None) -> str:
    """A condition in words: "south has no lanterns standing"; for the side `speaking`: "the other side has …"."""
    if isinstance(guard, Compare):
        return _compared(net, guard, speaking)
    said = sorted(guard_words(net, part, speaking) for part in guard.parts)
    return (" and " if isinstance(guard, Every) else " or ").join(dict.fromkeys(said))


def _compared(net: Net, guard: Compare, speaking: SideId | None) -> str:
    if isinstance(guard.count, Clock):
        time = time_words(guard.count.at_s)
        return f"{time} are over" if guard.relation is Relation.AT_LEAST else f"{time} are not over yet"
    if isinstance(guard.count, Taken):
        return "it is the first time"
    side = _side_of(guard.count)
    amount = {Relation.AT_LEAST: "at least ", Relation.AT_MOST: "at most ", Relation.EQUAL: ""}[guard.relation]
    bound = "all" if isinstance(guard.bound, Whole) else f"{amount}{guard.bound}"
    if guard.relation is Relation.EQUAL and guard.bound == 0:
        bound = "no"
    bound = "all" if isinstance(guard.bound, Whole) else bound
    what = count_words(net, guard.count, side)
    if side is None:
        return f"there are {bound} {what}"
    if speaking is None:
        return f"{does(side.key, 'has', 'have')} {bound} {what}"
    return f"{'it' if side == speaking else 'the other side'} has {bound} {what}"


def time_words(time_s: Fraction) -> str:
    """A time, in minutes where it has at least one."""
    return f"{float(time_s / 60):g} min" if time_s >= 60 else f"{float(time_s):g} s"


def _side_of(count: Count) -> SideId | None:
    """The side that has what is counted, None where it is not one side's."""
    match count:
        case Clock() | Taken():
            return None
        case Points():
            return count.side
        case PlayersAt():
            return next(iter(count.of)).side
        case ThingsAt():
            owners = {thing.owner for thing in count.of if isinstance(thing.owner, SideId)}
        case BallsAt():
            owners = {spot.owner for spot in count.at if isinstance(spot.owner, SideId)}
    return next(iter(owners)) if len(owners) == 1 else None


def count_words(net: Net, count: Count, side: SideId | None) -> str:
    """What is counted, of a side: "lanterns standing", "players in", "balls in its half"."""
    match count:
        case Clock() | Taken():
            return "moments"
        case Points():
            return "points"
        case PlayersAt():
            roles = {without_load(each.role) for each in count.of}
            noun = "players" if PLAIN in roles else plural(next(role.key for role in roles if role is not PLAIN))
            return f"{noun} {_where(count, side)}"
        case ThingsAt():
            nouns = sorted({plural_of(net, thing.kind) for thing in count.of})
            return f"{listing(nouns, 'or')} {' or '.join(sorted({_thing_standing(each) for each in count.at}))}"
        case BallsAt():
            nouns = sorted(plural_of(net, kind) for kind in count.of)
            spots = " or ".join(sorted(_lying(spot, side) for spot in count.at))
            if spots == "hands":
                return listing(nouns, "or")
            return f"{listing(nouns, 'or')} in its half" if spots == "half" else f"{listing(nouns, 'or')} {spots}"


def _lying(spot: Spot, side: SideId | None) -> str:
    """Where balls lie: an area of the side spoken of is "its" area."""
    own = spot.owner == side
    if own and isinstance(spot.of, AreaId):
        return lying(Spot(spot.of, SHARED, spot.part)).replace(" the ", " its ", 1)
    return lying(spot, own)


def _where(count: PlayersAt, side: SideId | None) -> str:
    """Where these players are; of an area that is meant whoever's it is, only its name."""
    spots = [each.spot for each in count.at if isinstance(each, At)]
    if len(spots) > 1 and len({spot.of for spot in spots}) == 1:
        return lying(Spot(spots[0].of, SHARED))
    where = {standing_words(At(spot), side) if side else lying(spot) for spot in spots}
    return " or ".join(sorted(where)) or "in"


def _thing_standing(standing: Posture | OnStep | At) -> str:
    if isinstance(standing, OnStep):
        return "at home"
    return (
        lying(standing.spot) if isinstance(standing, At) else {Posture.UP: "standing", Posture.DOWN: "down"}[standing]
    )

"""Conditions of the core: "south has no lanterns standing"."""

from __future__ import annotations

from fractions import Fraction
from typing import assert_never

from compose.net.net import Net
from compose.telling.english.places import in_a_row, lying, plural_of, standing_words
from compose.telling.sides import does, subject
from grammar.core.guards import (
    Ahead,
    BallsAt,
    Clock,
    Compare,
    Count,
    Every,
    Guard,
    LivesOf,
    OfEach,
    PartOfAll,
    PlayersAt,
    Points,
    Relation,
    Row,
    Taken,
    ThingsAt,
    TimesRun,
    Whole,
)
from grammar.core.values import (
    PLAIN,
    SHARED,
    AreaId,
    At,
    KindId,
    Landmark,
    OnStep,
    Part,
    Posture,
    Presence,
    SideId,
    Spot,
    without_load,
)
from grammar.words import called_by_players, listing, plural


def guard_words(net: Net, guard: Guard, speaking: SideId | None = None) -> str:
    """A condition in words: "south has no lanterns standing"; for the side `speaking`: "the other side has …"."""
    if isinstance(guard, Compare):
        return _compared(net, guard, speaking)
    if isinstance(guard, Ahead):
        return _ahead(net, guard, speaking)
    said = sorted(guard_words(net, part, speaking) for part in guard.parts)
    return (" and " if isinstance(guard, Every) else " or ").join(dict.fromkeys(said))


def _compared(net: Net, guard: Compare, speaking: SideId | None) -> str:
    if isinstance(guard.count, Clock):
        over = over_words(guard.count.at_s)
        return over if guard.relation is Relation.AT_LEAST else f"{over.removesuffix('over')}not over yet"
    if isinstance(guard.count, Taken):
        return "it is the first time"
    if isinstance(guard.count, Row):
        run = guard.count.run
        return f"{run.number} {in_a_row(run.skills, run.side)[1]}"
    side = _side_of(guard.count)
    if isinstance(guard.count, TimesRun):
        return _runs(guard, side, speaking)
    amount = {Relation.AT_LEAST: "at least ", Relation.AT_MOST: "at most ", Relation.EQUAL: ""}[guard.relation]
    bound = _part_words(guard) if isinstance(guard.bound, PartOfAll) else f"{amount}{guard.bound}"
    if guard.relation is Relation.EQUAL and guard.bound == 0:
        bound = "no"
    bound = "all" if isinstance(guard.bound, Whole) else bound
    their = "their" if side is not None and speaking is None and called_by_players(side.key) else "its"
    what = count_words(net, guard.count, side, guard.bound == 1, their)
    if side is None:
        return f"there {'is' if guard.bound == 1 else 'are'} {bound} {what}"
    if speaking is None:
        return f"{does(side.key, 'has', 'have')} {bound} {what}"
    return f"{'it' if side == speaking else 'the other side'} has {bound} {what}"


def _runs(guard: Compare, side: SideId | None, speaking: SideId | None) -> str:
    """ "North has run 10 times", or "2 times for each player"."""
    assert side is not None
    who = does(side.key, "has", "have") if speaking is None else "it has" if side == speaking else "the other side has"
    number = guard.bound.times if isinstance(guard.bound, OfEach) else guard.bound
    often = "once" if number == 1 else f"{number} times"
    return f"{who} run {often}{' with each player' if isinstance(guard.bound, OfEach) else ''}"


def _part_words(guard: Compare) -> str:
    assert isinstance(guard.bound, PartOfAll)
    if not guard.bound.halved:
        return f"all but {guard.bound.less}"
    most, least = ("fewer than", "more than") if guard.bound.beyond else ("at most", "at least")
    return f"{most if guard.relation is Relation.AT_MOST else least} half of the"


def _ahead(net: Net, guard: Ahead, speaking: SideId | None) -> str:
    """ "South has at least 2 more lanterns standing than north"."""
    side, than = _side_of(guard.count), _side_of(guard.than)
    if side is None or than is None:
        return ""
    much = "more" if guard.by == 1 else f"at least {guard.by} more"
    much = f"{guard.times} times as many" if guard.times > 1 else much
    what = f"{much} {count_words(net, guard.count, side)} {'as' if guard.times > 1 else 'than'}"
    if speaking is None:
        return f"{does(side.key, 'has', 'have')} {what} {subject(than.key)}"
    own, its = ("it" if each == speaking else "the other side" for each in (side, than))
    return f"{own} has {what} {its}"


def time_words(time_s: Fraction) -> str:
    """A time, in minutes where it has at least one."""
    return f"{float(time_s / 60):g} min" if time_s >= 60 else f"{float(time_s):g} s"


def over_words(time_s: Fraction) -> str:
    """So much of the round is over."""
    return f"{time_words(time_s)} {'is' if time_s in (1, 60) else 'are'} over"


def _side_of(count: Count) -> SideId | None:
    """The side that has what is counted, None where it is not one side's."""
    match count:
        case Clock() | Taken() | Row():
            return None
        case Points() | LivesOf() | TimesRun():
            return count.side
        case PlayersAt():
            return next(iter(count.of)).side
        case ThingsAt():
            owners = {thing.owner for thing in count.of if isinstance(thing.owner, SideId)}
        case BallsAt():
            owners = {spot.owner for spot in count.at if isinstance(spot.owner, SideId)}
        case _:
            assert_never(count)
    return next(iter(owners)) if len(owners) == 1 else None


def count_words(net: Net, count: Count, side: SideId | None, one: bool = False, their: str = "its") -> str:
    """What is counted, of a side: "lanterns standing", "players in", "balls in its half"; or `one` of them."""
    match count:
        case Clock() | Taken() | Row():
            return "moment" if one else "moments"
        case Points():
            return "point" if one else "points"
        case LivesOf():
            return "life" if one else "lives"
        case TimesRun():
            return "run" if one else "runs"
        case PlayersAt():
            roles = {without_load(each.role) for each in count.of}
            noun = "player" if PLAIN in roles else next(role.key for role in roles if role is not PLAIN)
            return f"{noun if one else plural(noun)} {_where(count, side)}"
        case ThingsAt():
            nouns = sorted({_kind(net, thing.kind, one) for thing in count.of})
            return f"{listing(nouns, 'or')} {' or '.join(sorted({_thing_standing(each) for each in count.at}))}"
        case BallsAt():
            nouns = sorted(_kind(net, kind, one) for kind in count.of)
            spots = " or ".join(sorted(_lying(spot, side, their) for spot in count.at))
            return f"{listing(nouns, 'or')} {spots}".rstrip()


def _kind(net: Net, kind: KindId, one: bool) -> str:
    return kind.key if one else plural_of(net, kind)


def _lying(spot: Spot, side: SideId | None, their: str) -> str:
    """Where balls lie: an area of the side spoken of is "its" area, what it has in hand is only that."""
    if spot.owner != side:
        return lying(spot)
    if spot.of is Landmark.HANDS:
        return ""
    if spot.of is Landmark.HALF and spot.part is Part.AT:
        return f"in {their} half"
    return lying(spot, the=their) if isinstance(spot.of, AreaId) else lying(spot, bare=True)


def _where(count: PlayersAt, side: SideId | None) -> str:
    """Where these players are; of an area that is meant whoever's it is, only its name."""
    if Presence.OUT in count.at:
        return "out"
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

"""Guards of the core → conditions on places."""

from __future__ import annotations

from compose.net.lower.builder import Builder
from compose.net.lower.own_ground import handed
from compose.net.lower.relays import runs_place
from compose.net.lower.runs import row_place
from compose.net.lower.tokens import (
    ball_place,
    clock_place,
    how_many,
    in_play,
    line_place,
    places_at,
    points_place,
    step_place,
    target_place,
)
from compose.net.net import All, AnyOf, Comparison, Condition
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
    PlayersAt,
    Points,
    Relation,
    Row,
    Taken,
    ThingsAt,
    TimesRun,
    Whole,
)
from grammar.core.values import At, OnStep, Population, Presence, SideId
from grammar.frozen import evolve


def condition_of(builder: Builder, guard: Guard) -> Condition:
    """The condition that a guard is on this net."""
    if isinstance(guard, Compare):
        return _compared(builder, guard)
    if isinstance(guard, Ahead):
        counts = ((1, guard.count), (-guard.times, guard.than))
        terms = tuple(term for times, count in counts for term in terms_of(builder, count, times))
        return Comparison(terms, ">=", guard.by)
    parts = tuple(condition_of(builder, part) for part in sorted(guard.parts, key=repr))
    return All(parts) if isinstance(guard, Every) else AnyOf(parts)


def _compared(builder: Builder, guard: Compare) -> Comparison:
    if isinstance(guard.count, Clock):
        return _of_clock(builder, guard.count, guard.relation)
    bound = bound_of(builder, guard)
    return Comparison(terms_of(builder, guard.count), guard.relation.value, bound)


def bound_of(builder: Builder, guard: Compare) -> int:
    """The number that is asked for, here where it hangs on how many there are."""
    if isinstance(guard.bound, int):
        return guard.bound
    if isinstance(guard.bound, OfEach):
        return guard.bound.times * max(builder.players.values())
    there = whole(builder, guard.count)
    return there if isinstance(guard.bound, Whole) else guard.bound.of(there, guard.relation)


def _of_clock(builder: Builder, clock: Clock, relation: Relation) -> Comparison:
    """Whether the moment has passed, or not yet."""
    number = builder.times_s.index(clock.at_s)
    passed = relation is Relation.AT_LEAST
    return Comparison(((1, clock_place(builder)),), ">=" if passed else "<=", number + 1 if passed else number)


def terms_of(builder: Builder, count: Count, times: int = 1) -> tuple[tuple[int, int], ...]:
    """The places whose tokens are counted, each with how much a token counts."""
    places = places_of(builder, count)
    if isinstance(count, LivesOf):
        return tuple((times * lives, place) for place in places if (lives := builder.places[place].lives))
    return tuple((times, place) for place in places)


def places_of(builder: Builder, count: Count) -> tuple[int, ...]:
    """The places whose tokens are counted."""
    match count:
        case Points():
            return (points_place(builder, count.side),)
        case LivesOf():
            waiting = [each for each in sorted(builder.whereabouts, key=repr) if each[0].side == count.side]
            playing = in_play(builder, *builder.play.populations(count.side))
            return playing + tuple(place for who, spot in waiting for place in places_at(builder, who, At(spot)))
        case PlayersAt():
            return tuple(
                place
                for who in builder.play.populations()
                if who in count.of
                for standing in sorted(count.at, key=repr)
                if _can_be(builder, who, standing)
                for place in places_at(builder, who, standing)
            )
        case BallsAt():
            kinds = sorted(count.of)
            theirs = [spot for spot in handed(builder.play) if evolve(spot, role=None) in count.at]
            spots = [*sorted(count.at, key=repr), *sorted(theirs, key=repr)]
            return tuple(ball_place(builder, kind, spot) for kind in kinds for spot in spots)
        case ThingsAt():
            return _of_things(builder, count)
        case Clock():
            return (clock_place(builder),)
        case Taken():
            return (line_place(builder, count.line),)
        case Row():
            return (row_place(builder, count),)
        case TimesRun():
            return (runs_place(builder, count.side),)


def _can_be(builder: Builder, who: Population, standing: Presence | At) -> bool:
    return isinstance(standing, Presence) or (who, standing.spot) in builder.whereabouts


def _of_things(builder: Builder, count: ThingsAt) -> tuple[int, ...]:
    found: dict[int, None] = {}
    for thing in sorted(count.of, key=repr):
        for standing in sorted(count.at, key=repr):
            if isinstance(standing, OnStep):
                track = builder.play.track_of(thing.kind)
                if track is not None and track.id == standing.track:
                    found[step_place(builder, thing.kind, standing.step)] = None
            else:
                found[target_place(builder, thing, standing)] = None
    return tuple(found)


def whole(builder: Builder, count: Count) -> int:
    """As many as there are: what "all" means."""
    match count:
        case PlayersAt():
            sides = {who.side for who in count.of}
            return sum(players_of(builder, side, count.of) for side in sides)
        case BallsAt():
            return sum(how_many(builder, kind) for kind in count.of)
        case ThingsAt():
            kinds = {thing.kind for thing in count.of}
            if builder.owners_change:
                return sum(how_many(builder, kind) for kind in kinds)
            return sum(how_many(builder, thing.kind, thing.owner) for thing in count.of)
        case LivesOf():
            return sum(builder.places[each].start * by for by, each in terms_of(builder, count))
        case Points() | Clock() | Taken() | Row() | TimesRun():
            raise TypeError("points and time have no whole")


def players_of(builder: Builder, side: SideId, who: frozenset[Population]) -> int:
    """How many players of these populations a side has: all of it, or those of its roles."""
    populations = builder.play.populations(side)
    if set(populations) <= who:
        return builder.players[side]
    return sum(
        place.start
        for key, place in zip(builder.numbers, builder.places, strict=True)
        if key[0] == "player" and key[1] in who and key[1] in populations
    )

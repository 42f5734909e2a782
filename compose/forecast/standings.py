"""Where pupils spend the round: playing, waiting, on a bench, out; as shares of one pupil's time."""

from __future__ import annotations

import math
from collections.abc import Iterator

from compose.check.condition import places_read
from compose.forecast.course import SURE, Course, Figure
from compose.net.match import Match
from compose.net.net import Net, Place
from compose.net.told import Tried
from grammar.core.declared import AreaKind
from grammar.core.rules import Result
from grammar.core.values import At, Presence
from grammar.frozen import frozen

PLAYING, WAITING, BENCH, OUT = "playing", "waiting", "on a bench", "out for the round"
RESTING = "resting"
STANDINGS = (PLAYING, WAITING, BENCH, OUT)
SENT_TO = ("mate", "player")  # aims at somebody: whoever may be aimed at takes part


@frozen
class Standing:
    """The share of a pupil's time in one standing, over all pupils and by side."""

    name: str
    share: Figure
    by_side: tuple[tuple[str, float], ...]


def standings(net: Net, course: Course) -> tuple[Standing, ...]:
    """The standings that the game has, in the order of `STANDINGS`; their shares sum to 1."""
    kinds = standing_of(net)
    found = []
    for name in STANDINGS:
        places = tuple(place for place, kind in kinds.items() if kind == name)
        if places:
            by_side = tuple((side, _share(net, course, places, side).value) for side in net.sides)
            found.append(Standing(name, _share(net, course, places, None), by_side))
    return with_rest(net.match, tuple(found))


def with_rest(match: Match, found: tuple[Standing, ...]) -> tuple[Standing, ...]:
    """The standings of all pupils where some sides rest while two play."""
    on = match.on_share
    if on == 1:
        return found
    sides = tuple(side for side, _ in found[0].by_side) if found else ()
    scaled = [
        Standing(
            each.name,
            Figure(each.share.value * on, each.share.margin * on),
            tuple((side, share * on) for side, share in each.by_side),
        )
        for each in found
    ]
    return (*scaled, Standing(RESTING, Figure(1 - on), tuple((side, 1 - on) for side in sides)))


def _share(net: Net, course: Course, places: tuple[int, ...], side: str | None) -> Figure:
    """The part of the player minutes spent in the places; of a round without time, the part at the set-up."""
    everywhere = [place for place in standing_of(net) if side in (None, net.places[place].side)]
    here = [place for place in places if place in everywhere]
    whole = sum(float(course.tokens[place]) for place in everywhere)
    if whole <= 0:
        whole = float(sum(net.places[place].start for place in everywhere))
        return Figure(sum(net.places[place].start for place in here) / whole if whole else 0.0)
    # What is not spent here is spent elsewhere, so the steadier of the two says how sure the share is.
    elsewhere = [place for place in everywhere if place not in here]
    spread = min(_spread(course, here), _spread(course, elsewhere))
    return Figure(sum(float(course.tokens[place]) for place in here) / whole, SURE * spread / whole)


def _spread(course: Course, places: list[int]) -> float:
    return math.sqrt(sum(float(course.spread_tokens[place]) ** 2 for place in places))


def standing_of(net: Net) -> dict[int, str]:
    """The standing that each place of players is."""
    part = taking_part(net)
    return {
        number: PLAYING if number in part else _kept_out(place)
        for number, place in enumerate(net.places)
        if place.token == "player"
    }


def taking_part(net: Net) -> frozenset[int]:
    """The places of players who act, who keep something, to whom others send the ball or who may catch it; to wait
    till somebody frees one is no act."""
    acting = {place for t in net.transitions if t.side is not None for limit in t.rate.limits for place in limit}
    reached = {place for t in net.transitions if t.attempt.aim in SENT_TO for place in places_read(t.guard)}
    busy, catching = acting.union(net.keeping), set(_catching(net))
    return frozenset(
        number
        for number, place in enumerate(net.places)
        if place.token == "player"
        and place.area is not AreaKind.QUEUE
        and not (isinstance(place.standing, At) and place.standing.spot.is_frozen)
        and (
            number in reached
            or (number in busy and not isinstance(place.standing, At))
            or (place.side in catching and place.standing is Presence.PLAYING)
        )
    )


def _catching(net: Net) -> Iterator[str]:
    """The sides of which whoever is in play may catch what others send."""
    for transition in net.transitions:
        told = transition.told
        if isinstance(told, Tried) and told.moment.result is Result.CAUGHT and told.moment.concerned is not None:
            yield told.moment.concerned.key


def idle_places(net: Net) -> tuple[int, ...]:
    """The places in which pupils do not play."""
    return tuple(place for place, kind in standing_of(net).items() if kind != PLAYING)


def _kept_out(place: Place) -> str:
    """What somebody does who neither acts nor is aimed at."""
    if place.standing is Presence.OUT:
        return OUT
    return BENCH if place.area is AreaKind.BENCH else WAITING


def pupils_of(net: Net, side: str | None = None) -> int:
    """How many pupils a side has at the set-up, or all sides together."""
    return sum(place.start for place in net.places if place.token == "player" and side in (None, place.side))

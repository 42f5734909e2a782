"""Where pupils spend the round: playing, waiting, on a bench, out; as shares of one pupil's time."""

from __future__ import annotations

import math

from compose.check.condition import places_read
from compose.forecast.course import SURE, Course, Figure
from compose.forecast.taking_part import SENT_TO, sides_that_catch, taking_part
from compose.net.match import Match
from compose.net.net import Net, Place
from grammar.core.area_kind import AreaKind
from grammar.core.values import Presence
from grammar.frozen import frozen

PLAYING, WAITING, BENCH, OUT = "playing", "waiting", "on a bench", "out for the round"
RESTING = "resting"
STANDINGS = (PLAYING, WAITING, BENCH, OUT)
NO_ACT = ("hold", "foul")  # to keep a ball, or to foul, is no turn of anybody's
Spent = dict[tuple[int, str], float]


@frozen
class Standing:
    """The share of a pupil's time in one standing, over all pupils and by side."""

    name: str
    share: Figure
    by_side: tuple[tuple[str, float], ...]


def standings(net: Net, course: Course) -> tuple[Standing, ...]:
    """The standings that the game has, in the order of `STANDINGS`; their shares sum to 1."""
    found, spent = [], _spent(net, course)
    for name in STANDINGS:
        if any(kind == name for _, kind in spent):
            by_side = tuple((side, _share(net, course, spent, name, side).value) for side in net.sides)
            found.append(Standing(name, _share(net, course, spent, name, None), by_side))
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


def _spent(net: Net, course: Course) -> Spent:
    """The player minutes in each place, by standing; of a round without time the players at the set-up."""
    kinds = standing_of(net)
    minutes = {place: float(course.tokens[place]) for place in kinds}
    if sum(minutes.values()) <= 0:
        minutes = {place: float(net.places[place].start) for place in kinds}
    spent = {(place, kinds[place]): each for place, each in minutes.items()}
    length = sum(minutes.values()) / max(1, pupils_of(net))
    for turn in taken_in_turn(net):
        ready = sum(minutes[place] for place in turn.ready)
        free = max(0.0, turn.at_once * length - sum(minutes[place] for place in turn.busy))
        if ready > free:
            for place in turn.ready:
                spent[place, PLAYING] = minutes[place] * free / ready
                spent[place, WAITING] = minutes[place] * (1 - free / ready)
    return spent


def _share(net: Net, course: Course, spent: Spent, name: str, side: str | None) -> Figure:
    """The part of the player minutes spent in a standing."""
    own = {key: minutes for key, minutes in spent.items() if side in (None, net.places[key[0]].side)}
    whole = sum(own.values())
    here = sum(minutes for (_, kind), minutes in own.items() if kind == name)
    # What is not spent here is spent elsewhere, so the steadier of the two says how sure the share is.
    places = list(dict.fromkeys(place for place, kind in own if kind == name))
    elsewhere = list(dict.fromkeys(place for place, _ in own if place not in places))
    spread = min(_spread(course, places), _spread(course, elsewhere))
    return Figure(here / whole if whole else 0.0, SURE * spread / whole if whole else 0.0)


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


@frozen
class InTurn:
    """Places of players who do nothing but what so many of a side do at a time, less those in the places `busy`."""

    ready: tuple[int, ...]
    at_once: int
    busy: tuple[int, ...]


def taken_in_turn(net: Net) -> tuple[InTurn, ...]:
    """Who of those that take part waits for a turn most of the time: all that they do goes one after the other."""
    part, others = taking_part(net), {*net.keeping}
    others |= {place for t in net.transitions if t.attempt.aim in SENT_TO for place in places_read(t.guard)}
    catching = set(sides_that_catch(net))
    found: dict[tuple[int, ...], InTurn] = {}
    for move in net.transitions:
        if move.side is None or move.attempt.skill in NO_ACT:
            continue
        ready = tuple(place for place in move.rate.limits[0] if place in part) if move.rate.limits else ()
        if move.rate.turns is None:
            others.update(place for limit in move.rate.limits for place in limit)
        elif ready:
            at_once = max(move.rate.turns[0], found[ready].at_once if ready in found else 0)
            found[ready] = InTurn(ready, at_once, move.rate.turns[1])
    return tuple(
        each
        for ready, each in found.items()
        if not others.intersection(ready) and not any(net.places[place].side in catching for place in ready)
    )


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

"""Where balls come to rest: what a rule says, else the most particular resting line; and where nobody follows them.

A ball that rests "in the half" may stop anywhere in it. Of an area that nobody enters, or from which nobody
fetches, it is taken that as many balls stop there as it covers of the half; of the ground behind a line from
which nobody fetches, that half of the balls roll there (assumptions). There they lie until somebody may fetch
them. So do balls stop in an area from which those who wait there send them: in it, or behind the line where it lies.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.builder import Builder
from compose.net.lower.tokens import in_play, owner_key
from compose.net.net import Rule
from compose.net.outcome import Moment
from compose.staging.floor.values import Rectangle
from grammar.core.declared import Area, Doing
from grammar.core.play import Along
from grammar.core.precedence import rest_for
from grammar.core.rules import Result
from grammar.core.values import SHARED, AreaId, KindId, Landmark, SideId, Spot
from grammar.frozen import frozen

BEYOND = 0.5  # assumption: the share of balls that roll behind a line from where nobody fetches them
LINES = (Landmark.BACK_LINE, Landmark.SIDE_LINE, Landmark.WALL, Landmark.CORNER)
LEAST = 1e-6  # share below which two areas only touch
PASSING = (Result.THROUGH, Result.CROSSED)
FLYING = (Result.MISSED, Result.KNOCKED, Result.HIT, *PASSING)


@frozen
class Landing:
    """Where the ball of an outcome comes to rest, by which rule, in which share of all cases.

    `shut` is True where nobody may follow it there.
    """

    spot: Spot
    rule: Rule
    share: float = 1.0
    shut: bool = False


def landings(builder: Builder, moment: Moment, said: tuple[Spot, Rule] | None, way: Rule) -> tuple[Landing, ...]:
    """All places where the ball of a moment may come to rest; `said` is what the rule for the event says.

    By the rule of the `way` what is carried lies where it was brought.
    """
    assert moment.ball is not None and moment.ball_at is not None
    if said is not None:
        return (Landing(*said),)
    if isinstance(moment.aim, Along) and not (moment.aim.from_hand and moment.result is Result.ARRIVED):
        brought = moment.result is Result.ARRIVED and not moment.aim.again
        return (Landing(moment.aim.goal if brought else moment.ball_at, way),)
    result = Result.MISSED if moment.result is Result.HIGH else moment.result  # it flies on as a miss does
    rest = rest_for(builder.play.rests, moment.by.side, moment.against, moment.ball, result, moment.skill)
    assert rest is not None, "the lines taken for granted say where every ball comes to lie"
    rule = builder.rule(rest.lines)
    if not rest.spreads or result not in FLYING:
        return (Landing(rest.to, rule),)
    shares = _stops(builder, rest.to, moment.ball, moment.concerned, moment.result in PASSING)
    return tuple(Landing(spot, rule, share, spot != rest.to) for spot, share in shares.items())


def _stops(builder: Builder, home: Spot, kind: KindId, toward: SideId | None, passed: bool) -> dict[Spot, float]:
    """Where balls stop that rest in a half (or on the court), with the share of each place: at hand, which comes
    first, or where nobody follows them.

    `toward` is the side at which they were sent; one that has `passed` its line or ring stops in no area before it.
    """
    shut: dict[Spot, float] = {}
    outside = _of_who_waits(builder, kind)
    closed = dict(_closed(builder, home, kind, outside))
    for spot, share in () if passed else closed.items():
        shut[spot] = shut.get(spot, 0.0) + share
    behind = [spot for spot in outside if spot not in closed and (toward is None or spot.owner in (toward, SHARED))]
    beyond = dict.fromkeys((*_beyond(builder, kind, toward), *behind))
    left = max(0.0, 1.0 - sum(shut.values()))
    shut |= {spot: left * BEYOND / len(beyond) for spot in beyond}
    left -= left * BEYOND if beyond else 0.0
    return {home: left, **shut} if left > LEAST else shut


def _of_who_waits(builder: Builder, kind: KindId) -> tuple[Spot, ...]:
    """Where players wait who may send balls of a kind from there."""
    offers = (offer for offer in builder.play.offers if any(each.ball == kind for each in offer.attempts))
    spots = ((offer.by, spot) for offer in offers for spot in sorted(offer.at, key=repr))
    return tuple(dict.fromkeys(spot for who, spot in spots if (who, spot) not in builder.reached))


def _closed(builder: Builder, home: Spot, kind: KindId, outside: tuple[Spot, ...]) -> Iterator[tuple[Spot, float]]:
    """Areas of the sheet, with the share of the half that they cover."""
    shut = {
        (area.id, area.owner) for area in builder.play.areas if Doing.ENTER in area.shut or _left_alone(builder, area)
    }
    unfetched = (each.spot for each in builder.play.unfetched if each.ball == kind)
    shut |= {(spot.of, spot.owner) for spot in (*unfetched, *outside) if isinstance(spot.of, AreaId)}
    if not shut:
        return
    whole = _rectangle(builder, home)
    counted: set[Rectangle] = set()  # on an undivided court several sides call the same floor theirs
    for area in builder.play.areas:
        if (area.id, area.owner) not in shut:
            continue
        for laid in builder.floor.areas:
            if (laid.name, laid.owner) == (area.id.key, owner_key(area.owner)):
                share = laid.rectangle.common_m2(whole) / (whole.length * whole.width)
                if share > LEAST and laid.rectangle not in counted:
                    counted.add(laid.rectangle)
                    yield Spot(area.id, area.owner), share


def _left_alone(builder: Builder, area: Area) -> bool:
    """Whether none of those who alone enter an area is there to bring out what stops in it."""
    return area.only is not None and not any(builder.places[at].start for at in in_play(builder, *area.only))


def _beyond(builder: Builder, kind: KindId, toward: SideId | None) -> Iterator[Spot]:
    """Places behind, before or beside the lines of the court."""
    for each in builder.play.unfetched:
        if each.ball == kind and each.spot.of in LINES and toward in (None, each.spot.owner):
            yield each.spot


def _rectangle(builder: Builder, home: Spot) -> Rectangle:
    half = builder.floor.half_of(home.owner.key) if isinstance(home.owner, SideId) else None
    return half or builder.floor.court

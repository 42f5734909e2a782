"""Acts that aim at nothing: fetching balls, freeing who waits, coming back, standing up what has fallen."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import assert_never

from attrs import evolve

from compose.net.attempt import Attempt
from compose.net.lower.attempt_numbers import ages_years
from compose.net.lower.builder import Builder, at_least
from compose.net.lower.cast import Stand, lives_left, waiting_stands
from compose.net.lower.own_ground import lies_in_what_is_shut, own_part, spots_at_hand
from compose.net.lower.tokens import ball_place, in_play, place_reached, player_place, target_place
from compose.net.net import All, Move, Rate, Ratio, Transition
from compose.net.told import CameBack, Doer, Fetched, Freed, StoodUp
from compose.staging.floor.nowhere import shut_to
from grammar.core.play import ComeBack, Fetch, Free, Lines, StandUp, Turn, Waiting, Who
from grammar.core.values import At, Posture, Presence, SideId, Teacher

LEAST_S = 1.0  # our choice: nobody comes back in less than a second


def lower_services(builder: Builder) -> None:
    """The transitions of all of them."""
    for service in builder.play.services:
        match service:
            case Fetch():
                admitted = evolve(service, who=_admitted(builder, service))
                builder.transitions.extend(_fetches(builder, admitted) if admitted.who else ())
            case Free():
                builder.transitions.extend(_frees(builder, service))
            case ComeBack():
                builder.transitions.extend(_comings(builder, service))
            case StandUp():
                builder.transitions.extend(_stand_ups(builder, service))
            case _:
                assert_never(service)


def act(builder: Builder, skill: str, lines: Lines, per_minute: float | None) -> Attempt:
    """What the forecast needs to know of an act that aims at nothing."""
    words = builder.core.lines[lines[0]].words
    return Attempt(words, skill, None, "none", said_per_minute=per_minute, age_years=ages_years(builder))


def _side(who: Who) -> SideId | None:
    return None if isinstance(who, Teacher) else next(iter(who)).side


def _doers(builder: Builder, who: Who) -> tuple[int, ...]:
    if isinstance(who, Teacher):
        return ()
    return in_play(builder, *(each for each in builder.play.populations() if each in who))


def _doer(builder: Builder, who: Who) -> Doer:
    """The teacher, or the first of the players who may do it."""
    return who if isinstance(who, Teacher) else next(each for each in builder.play.populations() if each in who)


def _fetches(builder: Builder, fetch: Fetch) -> Iterator[Transition]:
    """Balls come back from where they may be fetched.

    What is taken for granted only matters where balls can lie; a line of the sheet's own is followed up, so that
    the check can say that no ball ever comes to lie there.
    """
    side, spot = _side(fetch.who), fetch.spot
    if fetch.granted and builder.number(("ball", fetch.ball, spot)) is None:
        return
    rule = builder.rule(fetch.lines)
    if side is None:
        sides = (spot.owner,) if isinstance(spot.owner, SideId) else builder.play.side_ids
        homes = [own_part(builder.play, each) for each in sides]
    else:
        assert not isinstance(fetch.who, Teacher)
        who = next(each for each in builder.play.populations(side) if each in fetch.who)
        homes = [spots_at_hand(builder.play, who)[0]]
        if lies_in_what_is_shut(builder.play, spot):
            return
    source, doers = ball_place(builder, fetch.ball, spot), _doers(builder, fetch.who)
    for home in dict.fromkeys(homes):
        if home == spot:
            continue
        yield Transition(
            Fetched(_doer(builder, fetch.who), fetch.ball, spot),
            side.key if side else None,
            side is None,
            act(builder, "fetch", fetch.lines, _per_minute(fetch.per_minute)),
            "always",
            Rate((doers, (source,))) if doers and not fetch.alone else Rate(),
            All((at_least((source,)), at_least(doers))) if doers else at_least((source,)),
            (Move(source, ball_place(builder, fetch.ball, home), 1, rule),),
            (rule,),
            part=1 / len(set(homes)),  # now to one side, now to another
        )


def _admitted(builder: Builder, fetch: Fetch) -> Who:
    """Who may go there, of those who fetch."""
    if isinstance(fetch.who, Teacher):
        return fetch.who
    return frozenset(who for who in fetch.who if shut_to(builder.play, frozenset({who}), fetch.spot) is None)


def _per_minute(said: Fraction | None) -> float | None:
    return None if said is None else float(said)


def _frees(builder: Builder, free: Free) -> Iterator[Transition]:
    """The first in line comes back in, or all. Who frees others is not one of those who wait."""
    waiting = tuple(waiting_stands(builder, free.waiting))
    places = tuple(player_place(builder, *stand) for stand in waiting)
    rule, doers = builder.rule(free.lines), _doers(builder, free.who)
    if not places:
        return
    everybody = free.waiting.turn is Turn.ALL
    groups = [tuple(range(len(places)))] if everybody else [(number,) for number in range(len(places))]
    side = _side(free.who)
    for group in groups:
        chosen = tuple(places[number] for number in group)
        share = (Ratio(chosen, places),) if len(places) > 1 and not everybody else ()
        moves = tuple(
            Move(
                places[number],
                _back(builder, waiting[number]),
                None if everybody else free.waiting.count,
                rule,
                (),
                free.waiting.turn is Turn.LAST,
            )
            for number in group
        )
        yield Transition(
            Freed(_doer(builder, free.who), free.waiting),
            side.key if side else None,
            side is None,
            act(builder, "free", free.lines, _per_minute(free.per_minute)),
            "always",
            Rate((doers, places * free.together) if doers and not everybody else (doers,) if doers else (), share),
            All((at_least(chosen), at_least(doers, free.together))) if doers else at_least(chosen),
            moves,
            (rule,),
            part=1 / free.together,  # as many groups as there are at hand
        )


def _comings(builder: Builder, back: ComeBack) -> Iterator[Transition]:
    """One for every population. The time is the mean of each player's own; who waits is counted, not in which order."""
    if back.after_s is None:
        return  # with a point: dispatch.py
    rule = builder.rule(back.lines)
    per_minute = 60.0 / max(float(back.after_s), LEAST_S)
    for stand in waiting_stands(builder, Waiting(back.who, back.at, Turn.FIRST)):
        place = player_place(builder, *stand)
        assert isinstance(stand[1], At)
        yield Transition(
            CameBack(stand[0], stand[1].spot),
            None,
            True,
            act(builder, "free", back.lines, per_minute),
            "always",
            Rate(((place,),)),
            at_least((place,)),
            (Move(place, _back(builder, stand), 1, rule),),
            (rule,),
        )


def _back(builder: Builder, stand: Stand) -> int:
    """Where somebody who waited plays again, with the lives that they had left."""
    return place_reached(builder, stand[0], Presence.PLAYING, lives_left(stand))


def _stand_ups(builder: Builder, up: StandUp) -> Iterator[Transition]:
    """Fallen things are put up again."""
    rule, doers = builder.rule(up.lines), _doers(builder, up.who)
    fallen, standing = (target_place(builder, up.thing, posture) for posture in (Posture.DOWN, Posture.UP))
    side = _side(up.who)
    yield Transition(
        StoodUp(_doer(builder, up.who), up.thing),
        side.key if side else None,
        side is None,
        act(builder, "free", up.lines, _per_minute(up.per_minute)),
        "always",
        Rate((doers, (fallen,)) if doers else ()),
        All((at_least((fallen,)), at_least(doers))) if doers else at_least((fallen,)),
        (Move(fallen, standing, 1, rule),),
        (rule,),
    )

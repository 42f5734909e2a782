"""Offers → options: what a population may try with balls of one kind from one place, at one thing or person."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import assert_never

from attrs import evolve

from compose.net.lower.at_hand import Uses, balls_in_hand, rate_handed, rate_of, rate_outside, uses_of
from compose.net.lower.attempt_numbers import attempt_of, said_distance
from compose.net.lower.blocking import blocked_or_not
from compose.net.lower.builder import Builder, at_least, at_most
from compose.net.lower.guards import condition_of
from compose.net.lower.own_ground import spots_at_hand
from compose.net.lower.shares import Option, negated, shared
from compose.net.lower.taking import on_the_way_in_turn, rate_in_turn, rate_of_some, taken_alike
from compose.net.lower.tokens import ball_place, in_play, places_at, step_place, target_place
from compose.net.net import All, Comparison, Condition, Rate, Ratio
from compose.net.outcome import Moment
from compose.staging.floor.nowhere import shut_to
from compose.staging.floor.touching import meet
from grammar.core.guards import ALWAYS
from grammar.core.play import Along, AtPlayers, Attempt, AtThing, Offer, Order, Past, PickUp, Through, ToMate
from grammar.core.reading.phrases.aims import against, part_of_mate
from grammar.core.success import success_of
from grammar.core.values import At, KindId, Population, Posture, Presence, SideId, Skill, Spot, Thing

Aimed = tuple[Moment, tuple[Condition, ...], tuple[Ratio, ...], tuple[tuple[int, ...], ...]]


def options_of(builder: Builder) -> tuple[Option, ...]:
    """All options of a game, with the shares of the attempts that fall to each."""
    uses = {side: uses_of(builder, side) for side in builder.play.side_ids}
    options = [option for offer in builder.play.offers for option in _of(builder, offer, uses[offer.by.side])]
    every = shared(options, _while_play_goes_on(builder))
    return tuple(variant for option in every for variant in blocked_or_not(builder, option))


def _while_play_goes_on(builder: Builder) -> frozenset[Condition]:
    """What must be so for the round not to be over: somebody or something is left where none left ends it."""
    found: set[Condition] = set()
    for end in builder.play.ends:
        over = condition_of(builder, end.guard)
        if isinstance(over, Comparison):
            found.add(negated(over))
    return frozenset(found)


def _of(builder: Builder, offer: Offer, uses: Uses) -> Iterator[Option]:
    for attempt, stand in product(offer.attempts, _stands(builder, offer)):
        way = (attempt.aim.start, attempt.aim.goal) if isinstance(attempt.aim, Along | PickUp) else ()
        if shut_to(builder.play, frozenset({offer.by}), *way) is not None:
            continue
        counted_as = builder.counted_as(offer.by, stand)
        sources = _sources(builder, offer.by, attempt, counted_as)
        for source in sources:
            for moment, there, ratios, limits in _aimed(builder, offer, attempt, source, stand):
                guard: list[Condition] = [at_least(places_at(builder, offer.by, stand))]
                if source is not None:
                    guard.append(at_least((ball_place(builder, *source),)))
                only = _only(builder, offer)
                guard += [only] if only is not None else []
                rate = _rate(builder, offer, attempt, source, uses, counted_as)
                rate = evolve(rate, limits=(*rate.limits, *limits))
                tried = attempt_of(builder, offer, moment)
                option = Option(offer, attempt, moment, tried, (*guard, *there), rate, only, there, counted_as)
                yield _with_ratios(option, tuple(guard), ratios)


def _only(builder: Builder, offer: Offer) -> Condition | None:
    """What a line asks for before it may be tried, and that nobody is on the way where one goes after the other."""
    asked = condition_of(builder, offer.only) if offer.only != ALWAYS else None
    if not offer.at_once or not any(isinstance(each.aim, PickUp) for each in offer.attempts):
        return asked
    busy = in_play(builder, *on_the_way_in_turn(builder.play, offer))
    few = at_most(busy, offer.at_once - 1)
    return few if asked is None else All((asked, few))


def _stands(builder: Builder, offer: Offer) -> tuple[Presence | At, ...]:
    """Where who acts can be: in play, or where they wait. Where nobody ever waits the check sees that it never is."""
    if not offer.at:
        return (Presence.PLAYING,)
    spots = sorted(offer.at, key=repr)
    found = [spot for spot in spots if (offer.by, spot) in builder.whereabouts | builder.reached]
    return tuple(At(spot) for spot in found or spots)


def _rate(
    builder: Builder,
    offer: Offer,
    attempt: Attempt,
    source: tuple[KindId, Spot] | None,
    uses: Uses,
    stand: Presence | At,
) -> Rate:
    """How many act at once; of those who take things along as many as there are things, of several kinds any."""
    if isinstance(stand, At) and source is not None:
        return rate_outside(builder, offer.by, *source)
    if source is not None and source[1].role is not None:
        return rate_handed(builder, offer.by, *source, uses)
    if not isinstance(attempt.aim, PickUp) or source is None:
        return rate_in_turn(builder, offer, source) if offer.at_once else rate_of(builder, offer.by, source, uses)
    if offer.at_once:
        return rate_of_some(builder, offer, attempt.aim, source)
    kinds = taken_alike(builder.play, offer, attempt.aim)
    there = tuple(ball_place(builder, kind, attempt.aim.start) for kind in kinds)
    ratios = (Ratio((ball_place(builder, *source),), there),) if len(there) > 1 else ()
    return Rate((in_play(builder, offer.by), there), ratios)


def _with_ratios(option: Option, guard: tuple[Condition, ...], ratios: tuple[Ratio, ...]) -> Option:
    """Standing or not: fallen ones are aimed at, too, in vain. Of several persons or steps each has its share."""
    aim = option.moment.aim
    if isinstance(aim, AtThing) and aim.order is Order.STANDING_OR_NOT and option.moment.step is None:
        some = Comparison(tuple((1, place) for ratio in ratios for place in ratio.numerator), ">=", 1)
        return evolve(option, guard=(*guard, some), there=(some,), standing_ratio=ratios[:1], down_ratio=ratios[1:])
    return evolve(option, rate=evolve(option.rate, ratios=option.rate.ratios + ratios))


def _sources(
    builder: Builder, who: Population, attempt: Attempt, stand: Presence | At
) -> tuple[tuple[KindId, Spot] | None, ...]:
    """Each place from which a population takes balls of a kind; None where the act needs no ball.

    Whoever waits has the balls that lie there. What is carried is taken up where the way begins.
    """
    if attempt.ball is None:
        return (None,)
    if isinstance(stand, At):
        return ((attempt.ball, stand.spot),)
    way = attempt.aim if isinstance(attempt.aim, Along | PickUp) else None
    from_there = way is not None and not (isinstance(way, Along) and way.from_hand)
    spots = (way.start,) if way is not None and from_there else spots_at_hand(builder.play, who)
    return tuple((attempt.ball, spot) for spot in spots)


def _aimed(
    builder: Builder, offer: Offer, attempt: Attempt, source: tuple[KindId, Spot] | None, stand: Presence | At
) -> Iterator[Aimed]:
    """Each moment that may come of success, with what must be there for it, its share, and what limits the rate."""
    aim, by = attempt.aim, offer.by
    owner = against(aim, by)[0]
    concerned = owner if isinstance(owner, SideId) else _other(builder, by.side)
    moment = Moment(
        by,
        concerned,
        owner,
        attempt.skill,
        attempt.ball,
        source[1] if source else None,
        frozenset(thing.kind for thing in attempt.load),
        aim,
        success_of(attempt.skill, aim),
        by_at=stand,
        from_m=said_distance(builder.play, offer, aim),
    )
    match aim:
        case AtThing():
            yield from _at_thing(builder, aim.thing, moment)
        case AtPlayers():
            yield from _at_players(builder, aim, moment)
        case Through():
            stands = (at_least((target_place(builder, aim.thing, Posture.UP),)),) if aim.into else ()
            yield evolve(moment, thing=aim.thing), stands, (), ()
        case Past():
            yield moment, (), (), ()
        case ToMate():
            yield from _to_mate(builder, aim, moment)
        case PickUp():
            assert source is not None
            yield moment, (at_least((ball_place(builder, *source),)),), (), ()
        case Along():
            yield from _along(builder, attempt, moment)
        case _:
            assert_never(aim)


def _other(builder: Builder, side: SideId) -> SideId | None:
    """The one other side; where each plays for themselves that is their own."""
    others = builder.play.others(side) or (side,)
    return others[0] if len(others) == 1 else None


def _at_thing(builder: Builder, thing: Thing, moment: Moment) -> Iterator[Aimed]:
    """Whatever stands on a track is aimed at where it stands: one option for every step."""
    track = builder.play.track_of(thing.kind)
    if track is not None:
        places = tuple(step_place(builder, thing.kind, step) for step in range(track.steps + 1))
        for step, place in enumerate(places):
            yield evolve(moment, thing=thing, step=step), (at_least((place,)),), (Ratio((place,), places),), ()
        return
    standing = target_place(builder, thing, Posture.UP)
    ratios: tuple[Ratio, ...] = ()
    if isinstance(moment.aim, AtThing) and moment.aim.order is Order.STANDING_OR_NOT:
        its = (standing, target_place(builder, thing, Posture.DOWN))  # not as many as at first: they may change owners
        ratios = (Ratio(its[:1], its), Ratio(its[1:], its))
    yield evolve(moment, thing=thing), (at_least((standing,)),), ratios, ()


def _at_players(builder: Builder, aim: AtPlayers, moment: Moment) -> Iterator[Aimed]:
    """Nobody aims at themselves: where the aimer could be meant, another must be there."""
    chased = moment.skill is Skill.TOUCH
    targets = [each for each in builder.play.populations() if each in aim.of]
    targets = [each for each in targets if not chased or meet(builder.play, moment.by, each)]
    places = in_play(builder, *targets)
    for who in targets:
        own = in_play(builder, who)
        aimer_there = (who, builder.counted_as(who, moment.by_at)) == (moment.by, Presence.PLAYING)
        there = at_least(own, 2 if aimer_there else 1)
        ratios = (Ratio(own, places),) if len(targets) > 1 else ()
        if not aim.holding:
            yield evolve(moment, person=who), (there,), ratios, ()
        for held, in_hand, share in balls_in_hand(builder, aim.holding, who):
            yield evolve(moment, person=who, held=held), (there, in_hand), (*ratios, *share), ()


def _to_mate(builder: Builder, aim: ToMate, moment: Moment) -> Iterator[Aimed]:
    """Nobody passes to themselves either."""
    there = builder.whereabouts | builder.reached
    stands = [
        (who, standing)
        for who in builder.play.populations(moment.by.side)
        if who in aim.of
        for standing in sorted(aim.at, key=repr)
        if isinstance(standing, Presence) or (who, standing.spot) in there
    ]
    places = tuple(place for who, standing in stands for place in places_at(builder, who, standing))
    for who, standing in stands:
        own = places_at(builder, who, standing)
        here = builder.counted_as(moment.by, moment.by_at)
        least = 2 if (who, builder.counted_as(who, standing)) == (moment.by, here) else 1
        ratios = (Ratio(own, places),) if len(stands) > 1 else ()
        part = part_of_mate(standing, moment.by)
        concerned = part if isinstance(part, SideId) else moment.concerned
        passed = evolve(moment, person=who, mate_at=standing, against=part, concerned=concerned)
        yield passed, (at_least(own, least),), ratios, ()


def _along(builder: Builder, attempt: Attempt, moment: Moment) -> Iterator[Aimed]:
    """A load that stands where it may be taken; without one they just go."""
    loads = tuple(target_place(builder, thing, Posture.UP) for thing in sorted(attempt.load, key=repr))
    if not attempt.load:
        yield moment, (), (), ()
        return
    for thing, place in zip(sorted(attempt.load, key=repr), loads, strict=True):
        ratios = (Ratio((place,), loads),) if len(loads) > 1 else ()
        yield evolve(moment, thing=thing), (at_least((place,)),), ratios, (loads,)

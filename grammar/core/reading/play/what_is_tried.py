"""What all that is tried comes to: the balls that are run with, chased for, brought somewhere."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.core.play import Aim, Along, AtPlayers, AtThing, Offer, Through, ToMate
from grammar.core.values import At, KindId, Population, SideId, Thing


def aimed_and_run(offers: Iterable[Offer]) -> tuple[frozenset[Population | Thing], frozenset[KindId]]:
    """At whom and at what balls are sent, and the balls with which players go from place to place."""
    tried = [each for offer in offers for each in offer.attempts]
    sent_at = frozenset(one for each in tried if each.ball is not None for one in _aimed_at(each.aim))
    return sent_at, frozenset(each.ball for each in tried if each.ball is not None and isinstance(each.aim, Along))


def _aimed_at(aim: Aim) -> frozenset[Population | Thing]:
    match aim:
        case AtPlayers():
            return aim.of
        case AtThing() | Through():
            return frozenset({aim.thing})
        case _:
            return frozenset()


def only_entered(offers: Iterable[Offer]) -> frozenset[KindId]:
    """The kinds through or into which balls are sent, and at which none is."""
    aims = [attempt.aim for offer in offers for attempt in offer.attempts]
    through = {aim.thing.kind for aim in aims if isinstance(aim, Through)}
    return frozenset(through - {aim.thing.kind for aim in aims if isinstance(aim, AtThing)})


def chased_for(chases: Iterable[Offer]) -> frozenset[KindId]:
    """The balls for which whoever has one is chased."""
    aims = (each.aim for offer in chases for each in offer.attempts)
    return frozenset(ball for aim in aims if isinstance(aim, AtPlayers) for ball in aim.holding)


def carried_kinds(offers: Iterable[Offer]) -> frozenset[KindId]:
    """The kinds of loads that are brought somewhere for good."""
    return frozenset(
        thing.kind
        for offer in offers
        for attempt in offer.attempts
        if isinstance(attempt.aim, Along) and not attempt.aim.again
        for thing in attempt.load
    )


def brought_kinds(offers: Iterable[Offer]) -> frozenset[KindId]:
    """What somebody goes from place to place with: balls and loads, for good or again and again."""
    along = [each for offer in offers for each in offer.attempts if isinstance(each.aim, Along)]
    balls = {each.ball for each in along if each.ball is not None}
    return frozenset(balls | {thing.kind for each in along for thing in each.load})


def senders(offers: Iterable[Offer]) -> frozenset[tuple[Population, KindId]]:
    """Who in play can do something with which balls that they have."""
    in_play = (offer for offer in offers if not offer.at)
    return frozenset((offer.by, each.ball) for offer in in_play for each in offer.attempts if each.ball is not None)


def passed_to(offers: Iterable[Offer]) -> frozenset[tuple[SideId, At]]:
    """Where the team-mates of each side wait to whom passes go."""
    aims = ((offer.by.side, each.aim) for offer in offers for each in offer.attempts)
    return frozenset((side, at) for side, aim in aims if isinstance(aim, ToMate) for at in aim.at if isinstance(at, At))

"""Who fetches from where, where one line says that somebody does and another that nobody does."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Container, Iterable, Iterator

from grammar.core.play import Along, Fetch, Offer, Unfetched
from grammar.core.values import PLAIN, KindId, Landmark, SideId, Spot, Teacher

Reach = frozenset[tuple[KindId, Spot]]


def fetched(
    fetches: tuple[Fetch, ...], unfetched: tuple[Unfetched, ...], offers: tuple[Offer, ...], taken: frozenset[KindId]
) -> tuple[Fetch, ...]:
    """Those that hold: the sheet's own, but for a part of their places from where nobody fetches; and those taken for
    granted about what the sheet says nothing of, and which nobody carries or takes anywhere. A ball that lies loose
    whoever can do nothing with it leaves to those who can."""
    own = tuple(each for each in fetches if not each.granted)
    said = {(each.ball, each.spot) for each in own} | {(each.ball, each.spot) for each in unfetched}
    said |= set(_carried_from(offers))
    granted = (each for each in fetches if each.granted and (each.ball, each.spot) not in said)
    of_use = {(offer.by.side, attempt.ball) for offer in offers for attempt in offer.attempts}
    used = {ball for _, ball in of_use}
    free = (each for each in granted if each.ball not in taken)
    return (
        *_but_for(own, unfetched),
        *(each for each in free if each.ball not in used or not _loose(each) or _may_use(each, of_use)),
    )


def _loose(fetch: Fetch) -> bool:
    return fetch.spot.of is Landmark.COURT


def _may_use(fetch: Fetch, of_use: Container[tuple[SideId, KindId | None]]) -> bool:
    return isinstance(fetch.who, Teacher) or any((who.side, fetch.ball) in of_use for who in fetch.who)


def _but_for(own: tuple[Fetch, ...], unfetched: tuple[Unfetched, ...]) -> Iterator[Fetch]:
    named, nobody = _reaches(own), _reaches(unfetched)
    for each in own:
        against = (reach for reach in nobody.values() if (each.ball, each.spot) in reach)
        if not any(all(reach < named[line] for line in each.lines) for reach in against):
            yield each


def _carried_from(offers: tuple[Offer, ...]) -> Iterator[tuple[KindId, Spot]]:
    for attempt in (each for offer in offers for each in offer.attempts):
        if isinstance(attempt.aim, Along) and attempt.ball is not None:
            yield attempt.ball, attempt.aim.start


def fetched_by_nobody(fetches: tuple[Fetch, ...], unfetched: tuple[Unfetched, ...]) -> Iterator[tuple[int, int]]:
    """Pairs of lines that say it of the same places: somebody fetches, nobody does. Some with a task are an exception,
    so is the teacher, beside whom nobody of the players does, and so is the narrower of two lines."""
    named, nobody = _reaches(fetches), _reaches(unfetched)
    for each in fetches:
        if not isinstance(each.who, Teacher) and any(who.role is PLAIN for who in each.who):
            for line, reach in nobody.items():
                if (each.ball, each.spot) in reach and not any(named[own] < reach for own in each.lines):
                    yield each.lines[0], line


def _reaches(values: Iterable[Fetch | Unfetched]) -> dict[int, Reach]:
    """By line the balls and places of which it speaks."""
    said: dict[int, set[tuple[KindId, Spot]]] = defaultdict(set)
    for each in values:
        for line in each.lines:
            said[line].add((each.ball, each.spot))
    return {line: frozenset(reach) for line, reach in said.items()}

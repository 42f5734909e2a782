"""The claims that sentences make, and the numbers of points for which they ask."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import attempting, claims, events, finish, play, when
from grammar.sentences.base import Node


def asked(sentences: tuple[Node, ...], finished: bool) -> Iterator[int]:
    """The numbers of points that sentences ask for: those of the finish, or those of play and of rules."""
    ways = finish.WinWhen | finish.LoseWhen | finish.EndsWhen | finish.FirstTo | finish.After
    for sentence in sentences:
        if isinstance(sentence, finish.FirstTo):
            yield from (sentence.points.whole,) if finished else ()
        elif isinstance(sentence, ways) == finished:
            yield from (number for claim in claims_in(sentence) if (number := _points(claim)) is not None)


def _points(claim: claims.Claim) -> int | None:
    count = getattr(claim.quantity, "count", None)
    of_points = isinstance(claim.counted, claims.CountedPoints) and claim.than is None
    return count.whole if of_points and count is not None else None


def claims_in(sentence: Node) -> Iterator[claims.Claim]:
    """All claims that a sentence makes."""
    if isinstance(sentence, claims.Claim):
        yield sentence
    elif isinstance(sentence, claims.AnyWay):
        yield from (claim for way in sentence.ways for claim in way.claims)
    elif isinstance(sentence, attempting.Attempt | play.Touch):
        yield from (each for detail in sentence.details for each in claims_in(detail))
    elif isinstance(sentence, when.When):
        yield from claims_in(sentence.event)
        if sentence.condition:
            yield from claims_in(sentence.condition)
    elif isinstance(sentence, events.Becomes):
        yield sentence.claim
    elif isinstance(sentence, finish.WinWhen | finish.LoseWhen | finish.EndsWhen | attempting.OnlyWhen):
        yield from claims_in(sentence.condition)

"""What counts when the round is over: so many points for each thing that a side has then.

Nothing is given before: what was brought home and taken away again counts for whoever has it in the end.
"""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.ends import EndPoints
from grammar.core.guards import BallsAt, Count, PlayersAt, ThingsAt
from grammar.core.reading.phrases.claims import read_count
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, whose, whose_side
from grammar.core.values import SHARED, At, SideId, Spot
from grammar.meanings import FrozenMeaning, PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences import claims
from grammar.sentences.base import Name, Np, Quantity
from grammar.sentences.points import AtTheEnd, EndWorth


def read_end_points(reader: Reader, sentence: AtTheEnd, line: int) -> Iterator[EndPoints]:
    """What each side has of each kind; of one side where the line says for whom."""
    first: EndWorth = sentence.first
    if first.determiner not in (None, "a", "an", "each", "every", "all", "the"):
        raise Senseless(first, "`{said}`: of no side has been spoken.", "Leave that out.", said=first.determiner)
    lives = isinstance(first.counted, claims.CountedLives)
    if reader.solo and not lives:
        hint = "Give points in when; or for what each has left: at the end lives score 1 point"
        raise Senseless(sentence, "Where each plays for themselves no side has anything.", hint)
    sides = reader.side_ids if sentence.side is None else (_one_side(reader, sentence),)
    if lives:
        if sentence.others:
            raise Senseless(sentence.others[0], "Lives stand in a line of their own.", "Make two lines of it.")
        for side in sides:
            count = read_count(reader, first.counted, side, evolve(reader.of_one(side), that=None))
            yield EndPoints(side, count, first.points.whole, (line,))
        return
    if not isinstance(first.counted, claims.Counted):
        said = first.counted.words()
        title = quoting("{said} are no things that lie somewhere.", said=said.capitalize())
        raise Senseless(first.counted, title, "Name things or players.")
    for side in sides:
        for what, points in _worths(reader, sentence):
            claimed = claims.Counted(what, first.counted.state, span=first.counted.span)
            for whose_they_are in _of_whom(reader, sentence, claimed, side):
                count = read_count(reader, claimed, whose_they_are, evolve(reader.of_one(side), that=None))
                if sentence.side is None and _lies_with_another(reader, side, count):
                    continue
                if len(sides) > 1:
                    _refuse_common(first.counted, count)
                yield EndPoints(side, count, points.whole, (line,))


def _of_whom(reader: Reader, sentence: AtTheEnd, counted: claims.Counted, side: SideId) -> tuple[SideId, ...]:
    """Whose players count for a side: its own, or, where a line says for whom, those whom it names, or all of them who
    froze, are out or wait there. Who is caught counts for whoever caught them."""
    meaning = reader.game.meaning(counted.what)
    if not isinstance(meaning, PlayerMeaning | FrozenMeaning):
        return (side,)
    if meaning.side is not None:
        if sentence.side is None and len(reader.sides) > 1:
            other = next(each.key for each in reader.side_ids if each.key != meaning.side)
            hint = write(f"{sentence.words()} for {other}")
            raise Senseless(counted.what, "`{said}`: for whom they count is not said.", hint)
        return (SideId(meaning.side),)
    caught = isinstance(meaning, FrozenMeaning) or isinstance(counted.state, claims.Gone | claims.Placed)
    return reader.side_ids if sentence.side is not None and caught else (side,)


def _lies_with_another(reader: Reader, side: SideId, count: Count) -> bool:
    """Whether it is counted in places that only others have: what lies there counts for them."""
    owners = [reader.owners_of_place(spot.of) for spot in _spots(count)]
    return bool(owners) and all(side not in each and SHARED not in each for each in owners)


def _spots(count: Count) -> frozenset[Spot]:
    if isinstance(count, BallsAt):
        return count.at
    if isinstance(count, ThingsAt | PlayersAt):
        return frozenset(each.spot for each in count.at if isinstance(each, At))
    return frozenset()


def _worths(reader: Reader, sentence: AtTheEnd) -> Iterator[tuple[Name, Quantity]]:
    assert isinstance(sentence.first.counted, claims.Counted)
    yield sentence.first.counted.what, sentence.first.points
    for worth in sentence.others:
        _refuse_owner(reader, worth.what)
        yield worth.what.name, worth.points


def _refuse_owner(reader: Reader, what: Np) -> None:
    if whose(reader.game, what).whose not in (Whose.UNSAID, Whose.ONE_EACH):
        raise Senseless(what, "`{said}`: each side has its own.", write(what.name.text))


def _one_side(reader: Reader, sentence: AtTheEnd) -> SideId:
    assert sentence.side is not None
    said = whose_side(reader.game, sentence.side)
    if said.whose is not Whose.NAMED or said.side is None:
        raise Senseless(sentence.side, "`{said}` could be any side.", "Name it, or leave that out.")
    return said.side


def _refuse_common(counted: claims.Counted, count: Count) -> None:
    """Raises Senseless where all sides would have the same, since the place is nobody's."""
    spots = frozenset[Spot]() if isinstance(count, PlayersAt) else _spots(count)
    if spots and all(spot.owner == SHARED for spot in spots):
        hint = "Name a place of each side, or say for whom at the end of the line: for north."
        raise Senseless(counted, "`{said}`: all sides have that alike.", hint)

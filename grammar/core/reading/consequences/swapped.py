"""Who changes places with whom: one with one, all with all who wait, or so many of those who play with as many."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.play import Waiting
from grammar.core.reading.consequences.movers import movers, waiting_of
from grammar.core.reading.events.away import is_away, mate_is_away
from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import ON_A_PLAYER, AllPlaying, Person, Result, Swap
from grammar.said import quoting, write
from grammar.sentences import queues, then
from grammar.sentences.base import Np, Quantity

# With whom who acted can change sides and tasks: both of them play.
EXCHANGED = dict.fromkeys(ON_A_PLAYER, Person.OBJECT) | {Result.KNOCKED: Person.KEEPER, Result.CAUGHT: Person.CATCHER}


def swapped(reader: Reader, consequence: then.ChangesPlaces, moment: Moment) -> Iterator[Swap]:
    """Raises Senseless where they cannot."""
    if consequence.number is not None:
        yield from _so_many(reader, consequence, consequence.number, moment)
        return
    who, other = consequence.who, consequence.other
    if isinstance(who, Np) and isinstance(other, queues.Queued | queues.AllQueued):
        for mover in movers(reader, who, moment):
            assert not isinstance(mover.who, Waiting)
            if isinstance(mover.who, AllPlaying) != isinstance(other, queues.AllQueued):
                raise Senseless(consequence, "One changes with one, all with all.", write("all … with all in …"))
            for waiting in waiting_of(reader, other, moment, mover.side):
                assert isinstance(waiting.who, Waiting)
                if waiting.who.count > 1:
                    raise Senseless(other, "One changes with one.", write("the first in …"))
                yield Swap(mover.who, waiting.who)
        return
    if isinstance(who, Np) and isinstance(other, Np):
        pair = {mover.who for phrase in (who, other) for mover in movers(reader, phrase, moment)}
        if pair == {Person.ACTOR, Person.MATE} and mate_is_away(moment):
            yield Swap(Person.ACTOR, Person.MATE)
            return
        against = EXCHANGED.get(moment.result) if moment.result else None
        if against is not None and pair == {Person.ACTOR, against} and not is_away(Person.ACTOR, moment):
            yield Swap(Person.ACTOR, against)
            return
    raise Senseless(consequence, "These cannot change places.", write("that player changes places with the first in …"))


def _so_many(reader: Reader, said: then.ChangesPlaces, number: Quantity, moment: Moment) -> Iterator[Swap]:
    """So many of all who play, of each side that is meant, who are alike; and as many of those who have waited
    longest."""
    who, other = said.who, said.other
    first = isinstance(other, queues.Queued) and other.end == "first"
    if not first or number.value != number.whole or number.whole < 1 or not isinstance(who, Np):
        raise Senseless(said, "So many change places with the first who wait.", _AS_MANY)
    assert isinstance(other, queues.Queued)
    if (other.number.value if other.number else 1) != number.value:
        raise Senseless(other, "As many come in as go off.", _AS_MANY)
    if reader.lives or reader.taken:
        told = "Of several who change places it is not known who has how many lives, or carries something."
        raise Senseless(said, told, write("all players change places with all in …"))
    for mover in movers(reader, evolve(who, determiner="all"), moment):
        assert isinstance(mover.who, AllPlaying)
        if len(mover.who.who) != 1:
            title = quoting("`{said}`: of which task they are is not known.", said=who.words())
            raise Senseless(who, title, "Name the task, or say all players.")
        for waiting in waiting_of(reader, other, moment, mover.side):
            assert isinstance(waiting.who, Waiting)
            yield Swap(mover.who, waiting.who, number.whole)


_AS_MANY = write("2 players change places with the first 2 in …")

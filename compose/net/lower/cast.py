"""Who the persons of an event are, where several populations could be meant: each with its share.

Places count players by role and keep no order. Each role that could be the first in a queue, the catcher or the
keeper is so with the chance of its share of those who could be (by symmetry exact where all come and go alike;
an assumption otherwise).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from compose.net.lower.builder import Builder, at_least, none_in
from compose.net.lower.lives import lives_at
from compose.net.lower.tokens import player_place
from compose.net.lower.whereabouts import who_waits
from compose.net.net import Condition, Ratio
from compose.net.outcome import Moment
from grammar.core.play import Turn, Waiting
from grammar.core.rules import Effect, Go, LifeOf, Person, Result, Swap
from grammar.core.values import At, Population, Presence, without_load
from grammar.frozen import evolve, field, frozen

Stand = tuple[Population, Presence | At] | tuple[Population, Presence | At, int]  # with lives, where they are counted


@frozen
class Cast:
    """The persons of a moment with where they are; None: nobody is there. Its condition and its share."""

    persons: Mapping[Person | Waiting, Stand | None]
    guard: tuple[Condition, ...] = field(default=())
    share: tuple[Ratio, ...] = field(default=())


def casts(builder: Builder, moment: Moment, effects: Iterable[Effect], given: Cast | None = None) -> Iterator[Cast]:
    """Every way in which the persons that the effects speak of can be settled; some may be `given`."""
    known = given or Cast(_known(moment))
    left = [each for each in _spoken_of(effects) if not _is_settled(builder, known.persons, each)]
    yield from _settled(builder, moment, known, left)


def _is_settled(builder: Builder, persons: Mapping[Person | Waiting, Stand | None], who: Person | Waiting) -> bool:
    """Whether it is known who somebody is, and how many lives they have where these are counted."""
    if who not in persons:
        return False
    stand = persons[who]
    return stand is None or len(stand) == 3 or not lives_at(builder.play, builder.kept, *stand)


def lives_left(stand: Stand) -> int | None:
    """How many lives somebody has left; None where they are not counted there."""
    return stand[2] if len(stand) == 3 else None


def with_lives(builder: Builder, who: Population, standing: Presence | At) -> Iterator[Stand]:
    """Somebody who stands so, with each number of lives that they may have left."""
    there = lives_at(builder.play, builder.kept, who, standing)
    if there:
        yield from ((who, standing, lives) for lives in there)
    else:
        yield who, standing


def waiting_stands(builder: Builder, waiting: Waiting) -> Iterator[Stand]:
    """Everybody who could wait there, with each number of lives that they may have left."""
    for who, spot in who_waits(builder, waiting):
        yield from with_lives(builder, who, At(spot))


def _known(moment: Moment) -> dict[Person | Waiting, Stand | None]:
    found: dict[Person | Waiting, Stand | None] = {Person.ACTOR: (_actor(moment), moment.by_at)}
    if moment.person is not None:
        found[Person.OBJECT] = found[Person.CATCHER] = (moment.person, Presence.PLAYING)
        if moment.mate_at is not None:
            found[Person.MATE] = (moment.person, moment.mate_at)
            del found[Person.CATCHER]
    return found


def _actor(moment: Moment) -> Population:
    """Who acted, as they are then: whoever has brought something has nothing in their hands any more."""
    return Population(moment.by.side, without_load(moment.by.role)) if moment.result is Result.ARRIVED else moment.by


def _spoken_of(effects: Iterable[Effect]) -> Iterator[Person | Waiting]:
    for effect in effects:
        for who in (
            (effect.who,)
            if isinstance(effect, Go | LifeOf)
            else (effect.who, effect.other)
            if isinstance(effect, Swap)
            else ()
        ):
            if isinstance(who, Person) or (isinstance(who, Waiting) and who.turn is not Turn.ALL):
                yield who


def _settled(builder: Builder, moment: Moment, cast: Cast, left: list[Person | Waiting]) -> Iterator[Cast]:
    if not left:
        yield cast
        return
    who, rest = left[0], [each for each in left[1:] if each != left[0]]
    known = cast.persons.get(who)
    stands = tuple(with_lives(builder, known[0], known[1]) if known else _candidates(builder, moment, who))
    places = tuple(player_place(builder, *stand) for stand in stands)
    if len(stands) < 2:
        one = {**cast.persons, who: stands[0] if stands else None}
        yield from _settled(builder, moment, evolve(cast, persons=one), rest)
        return
    for stand, place in zip(stands, places, strict=True):
        chosen = evolve(
            cast,
            persons={**cast.persons, who: stand},
            guard=(*cast.guard, at_least((place,))),
            share=(*cast.share, Ratio((place,), places)),
        )
        yield from _settled(builder, moment, chosen, rest)
    if known:
        return
    nobody = evolve(cast, persons={**cast.persons, who: None}, guard=(*cast.guard, none_in(places)))
    yield from _settled(builder, moment, nobody, rest)


def _candidates(builder: Builder, moment: Moment, who: Person | Waiting) -> Iterator[Stand]:
    """Everybody who could be meant."""
    if isinstance(who, Waiting):
        yield from waiting_stands(builder, who)
    elif moment.concerned is not None:
        for each in builder.play.populations(moment.concerned):
            yield from with_lives(builder, each, Presence.PLAYING)

"""Who brings back those who wait, and who comes back by themselves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from grammar.core.play import ComeBack, Free, Turn, Waiting
from grammar.core.reading.events.crossing import how_many_wait, waiting_there
from grammar.core.reading.phrases.aims import spoken_of
from grammar.core.reading.phrases.clock import read_wait
from grammar.core.reading.phrases.frozen import frozen_ones, mates_frozen, where_frozen
from grammar.core.reading.play.services import doers_of, spots_of_place
from grammar.core.reading.sheet.reader import Reader, exactly
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import SHARED, Owner, Part, SideId, Spot
from grammar.meanings import TeacherMeaning
from grammar.said import quoting, write
from grammar.sentences import freezing, play, queues
from grammar.sentences.base import Np, Quantity

MOST_TOGETHER = 4  # our choice: more than four have no room around one


def read_free(reader: Reader, sentence: queues.Free, line: int) -> Iterator[Free]:
    """Who brings back whom."""
    per_minute = exactly(sentence.pace.times) if sentence.pace else None
    if isinstance(sentence.queued, Np):
        yield from _free_frozen(reader, sentence, sentence.queued, per_minute, line)
        return
    turn = Turn(sentence.queued.end) if isinstance(sentence.queued, queues.Queued) else Turn.ALL
    where, together = sentence.queued.where, _together(reader, sentence)
    for who, side in doers_of(reader, sentence.who):
        spots = _waiting_spots(reader, sentence.queued.preposition, where, side)
        for owner, at in _by_owner(spots):
            for one in _freed_sides(reader, where, owner, at, side):
                players = frozenset(reader.populations([one]))
                waiting = Waiting(players, at, turn, how_many_wait(sentence.queued, players))
                yield Free(who, waiting, per_minute, (line,), together)


def _free_frozen(
    reader: Reader, sentence: queues.Free, whom: Np, per_minute: Fraction | None, line: int
) -> Iterator[Free]:
    """Who brings back whom of those who froze: players one of their own, the teacher one of any side."""
    together = _together(reader, sentence)
    for who, side in doers_of(reader, sentence.who):
        if side is None:
            found = tuple(frozen_ones(reader, whom, Spoken(reader.side_ids), reader.all_sides))
        else:
            found = (mates_frozen(reader, whom, side, spoken_of(reader, side)),)
        yield from (Free(who, waiting, per_minute, (line,), together) for waiting in found)


def _together(reader: Reader, sentence: queues.Free) -> int:
    """How many it takes to bring somebody back."""
    number = sentence.number
    if number is None:
        return 1
    alone = isinstance(reader.game.meaning(sentence.who.name), TeacherMeaning)
    if alone or number.value != number.whole or not 1 <= number.whole <= MOST_TOGETHER:
        title = quoting("`{number} {who}` cannot do it together.", number=number.words(), who=sentence.who.words())
        raise Senseless(number, title, write("2 players free the first in their queue"))
    return number.whole


def _freed_sides(
    reader: Reader, where: Np, owner: Owner, at: frozenset[Spot], side: SideId | None
) -> tuple[SideId, ...]:
    """Whose players are brought back: players free their own, the teacher whoever waits there."""
    there = _waiting(reader, owner, at)
    freed = there & {side} if side else there
    if not freed:
        title = "Nobody of their own side waits at `{said}`: players of the other side are sent there."
        name = where.name.text
        raise Senseless(where, title, write(f"the {name} of the other side" if owner == side else f"their {name}"))
    return tuple(each for each in reader.side_ids if each in freed)


def _waiting(reader: Reader, owner: Owner, at: frozenset[Spot]) -> frozenset[SideId]:
    """Whose players wait at places of one owner."""
    return reader.all_sides if owner is SHARED else frozenset().union(*(waiting_there(reader, spot) for spot in at))


def _waiting_spots(reader: Reader, preposition: str | None, where: Np, side: SideId | None) -> tuple[Spot, ...]:
    spots = spots_of_place(reader, preposition, where, side, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        raise Senseless(
            where, "Nobody waits at `{where}`.", "Name a queue, a bench or another area.", where=where.words()
        )
    return spots


def _by_owner(spots: Iterable[Spot]) -> Iterator[tuple[Owner, frozenset[Spot]]]:
    found: dict[Owner, list[Spot]] = {}
    for spot in spots:
        found.setdefault(spot.owner, []).append(spot)
    yield from ((owner, frozenset(each)) for owner, each in found.items())


def read_frozen_back(reader: Reader, sentence: freezing.FrozenBack, line: int) -> Iterator[ComeBack]:
    """Whoever froze is free by themselves, after how long."""
    for side in reader.side_ids:
        at = frozenset({where_frozen(side)})
        yield ComeBack(frozenset(reader.populations([side])), at, after_s(reader, sentence.time), (line,))


def after_s(reader: Reader, time: Quantity | str | None) -> Fraction | None:
    """After how long; None for the next point. Raises Senseless."""
    return read_wait(reader, time, time) if isinstance(time, Quantity) else None


def read_comes_back(reader: Reader, sentence: play.ComesBack, line: int) -> Iterator[ComeBack]:
    """Who comes back by themselves, after how long; "their" and "the other side" are said of whoever waits."""
    time_s = after_s(reader, sentence.time)
    if whose(reader.game, sentence.where).whose in (Whose.OWN, Whose.OTHER):
        for side in reader.side_ids:
            at = frozenset(_waiting_spots(reader, "in", sentence.where, side))
            yield ComeBack(frozenset(reader.populations([side])), at, time_s, (line,))
        return
    yield from comings_back(reader, _waiting_spots(reader, "in", sentence.where, None), time_s, line)


def comings_back(reader: Reader, spots: Iterable[Spot], time_s: Fraction | None, line: int) -> Iterator[ComeBack]:
    """Those who wait at these places, each owner's by themselves."""
    for owner, at in _by_owner(spots):
        sides = [each for each in reader.side_ids if each in _waiting(reader, owner, at)]
        yield ComeBack(frozenset(reader.populations(sides)), at, time_s, (line,))

"""The lines of the kit and the set-up → kinds, how many there are, and where everything starts."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.declared import ALL, All, AllBut, Kind, Per, Start, Supply
from grammar.core.reading.phrases.going_back import in_stores
from grammar.core.reading.set_up.posts import all_play_on
from grammar.core.reading.set_up.which_of_several import (
    refuse_all_in_each,
    refuse_any_of_several,
    refuse_half_of_whom,
    refuse_in_each_of_many,
    refuse_one_of_several,
    things_meant,
)
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import (
    SHARED,
    CatalogueId,
    KindId,
    Landmark,
    OnStep,
    Owner,
    Part,
    Population,
    SideId,
    Sort,
    Spot,
    Spread,
    Thing,
    TrackId,
    Upon,
)
from grammar.game import GameKit
from grammar.meanings import PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences import sides
from grammar.sentences.base import Np, OwnerName


def read_kind(line: GameKit, number: int, taken: frozenset[KindId]) -> Kind:
    """What the things of a kit line are like; what players take from place to place is no target."""
    scale = Fraction(line.scale).limit_denominator(10**6)
    sort = Sort(line.category)
    if sort is not Sort.BALL and KindId(line.name) in taken:
        sort = Sort.LOAD
    return Kind(KindId(line.name), sort, CatalogueId(line.like), scale, line.parts, (number,))


def read_supplies(line: GameKit, reader: Reader, sentence: sides.Kit, number: int) -> Iterator[Supply]:
    """How many there are, once for each owner."""
    owner = sentence.owner
    if owner is not None and (owner.other or owner.determiner in ("their", "its", "that")):
        raise Senseless(owner, "`{said}`: of no side has been spoken.", write("for each side", "name a side."))
    if isinstance(owner, OwnerName) and _is_role(reader, owner):
        raise Senseless(owner, "`{said}`: a role owns nothing.", write("for each side", "name a side."))
    per = Per.PLAYER if line.per_player else Per.OWNER
    owners: tuple[Owner, ...] = (SHARED,)
    if line.owner == "each":
        owners = reader.side_ids
    elif line.owner is not None:
        owners = (SideId(line.owner),)
    for each in owners:
        yield Supply(Thing(KindId(line.name), each), line.count, per, (number,))


def _is_role(reader: Reader, owner: OwnerName) -> bool:
    meaning = reader.game.meaning(owner.name)
    return isinstance(meaning, PlayerMeaning) and meaning.role is not None


def read_placing(reader: Reader, sentence: sides.Placing, line: int) -> Iterator[Start]:
    """Where things or players start: one for each place that is meant."""
    spread = Spread(sentence.spread) if sentence.spread else None
    count = _count(sentence)
    refuse_any_of_several(reader, sentence.where)
    refuse_one_of_several(reader, sentence)
    if reader.is_kit(sentence.what):
        refuse_half_of_whom(reader, sentence)
        refuse_all_in_each(reader, sentence)
        refuse_in_each_of_many(reader, sentence)
        found = list(_things_start(reader, sentence, count, spread, line))
        _refuse_side_without(reader, sentence, found)
        yield from found
        return
    if sentence.lying is not None:
        raise Senseless(sentence, "Nobody lies: players stand.", "Leave out that they lie.")
    said, role = reader.player_phrase(sentence.what)
    meant = Spoken(reader.side_ids).meant(said, reader.all_sides)
    for side in [each for each in reader.side_ids if each in meant]:  # a side whose own line means nothing is in none
        spoken = Spoken(reader.side_ids, own=frozenset({side}), other=_opponents(reader, side))
        for spot in reader.spots(sentence.preposition, sentence.where, spoken, frozenset({side})):
            start = Start(Population(side, role or reader.roles_of(side)[0]), count, spot, spread, (line,))
            if reader.waits_in(spot) and not (count is ALL and all_play_on(reader, sentence.where)):
                yield start
            else:
                reader.posts.append(start)


def _things_start(
    reader: Reader, sentence: sides.Placing, count: int | All | AllBut, spread: Spread | None, line: int
) -> Iterator[Start]:
    for thing in things_meant(reader, sentence.what):
        spots = _thing_spots(reader, sentence, thing)
        for at, number in zip(spots, _dealt(reader, sentence, count, len(spots)), strict=True):
            if number != 0 and _goes_there(reader, sentence, thing, at):
                down = sentence.lying is not None and reader.sort(thing.kind) is Sort.TARGET
                yield Start(thing, number, at, spread, (line,), _on_middle_line(reader, sentence, at), down)


def _refuse_side_without(reader: Reader, sentence: sides.Placing, starts: list[Start]) -> None:
    """Raises Senseless where things are to be at a place of each side, and a side has none of them."""
    if reader.is_kit(sentence.where) or whose(reader.game, sentence.where, True).whose is not Whose.ONE_EACH:
        return
    there = {start.at.owner for start in starts if isinstance(start.at, Spot)}
    without = [side for side in reader.side_ids if side not in there and SHARED not in there]
    if without and len(reader.owners_of_place(reader.place(sentence.where))) > 1:
        side, what = without[0].key.capitalize(), sentence.what.words()
        title = quoting("{side} have none of these: `{what}`.", side=side, what=what)
        raise Senseless(sentence.where, title, "Name the side on whose part they are.")


def _opponents(reader: Reader, side: SideId) -> frozenset[SideId] | None:
    others = reader.others(side)
    return others if len(others) == 1 else None


def _count(sentence: sides.Placing) -> int | All | AllBut:
    if sentence.count is None:
        return ALL
    return AllBut(sentence.count.whole) if sentence.all_but else sentence.count.whole


def _goes_there(reader: Reader, sentence: sides.Placing, thing: Thing, at: Spot | Upon) -> bool:
    """Things of a side that go to each line or half go to its own; balls are dealt to the part of their side.

    Balls that the kit has for each side and that go where all share are brought by the first of them.
    """
    if thing.owner is SHARED or not isinstance(at, Spot):
        return True
    if reader.sort(thing.kind) is not Sort.BALL:
        each = whose(reader.game, sentence.where, True).whose is Whose.ONE_EACH
        return not each or at.owner in (thing.owner, SHARED)
    owners = [each.owner for each in reader.owned(thing.kind)]
    return thing.owner == (at.owner if at.owner in owners else owners[0])


def _dealt(
    reader: Reader, sentence: sides.Placing, count: int | All | AllBut, places: int
) -> tuple[int | All | AllBut, ...]:
    """How many go to each of several places: so many to each half, but so many in all to "the" corners."""
    unsaid = not reader.is_kit(sentence.where) and whose(reader.game, sentence.where, True).whose is Whose.UNSAID
    if not isinstance(count, int) or not unsaid:
        return (count,) * places
    return tuple(count // places + (number < count % places) for number in range(places))


def _on_middle_line(reader: Reader, sentence: sides.Placing, at: Spot | Upon) -> bool:
    """What lies on the middle line lies in the middle, but in a row."""
    in_the_middle = isinstance(at, Spot) and (at.of, at.part) == (Landmark.MIDDLE, Part.AT)
    return in_the_middle and reader.place(sentence.where) is Landmark.MIDDLE_LINE


def _thing_spots(reader: Reader, sentence: sides.Placing, thing: Thing) -> tuple[Spot | Upon, ...]:
    owner = thing.owner
    own = frozenset(reader.side_ids) if owner is SHARED else frozenset({owner})
    spoken = Spoken(reader.side_ids, own=own, other=None if owner is SHARED else _opponents(reader, owner))
    if reader.is_kit(sentence.where):
        part = reader.part(sentence.preposition, sentence.where, Part.AT, Part.BEFORE, Part.BEHIND, Part.BESIDE)
        upon = Upon(_under(reader, sentence.where, thing, spoken, own), part)
        in_a_crate = reader.sort(thing.kind) is Sort.BALL and sentence.preposition == "in"
        return in_stores(reader, sentence.where, upon.kind, own) if in_a_crate else (upon,)
    return reader.spots(sentence.preposition, sentence.where, spoken, own)


def _under(reader: Reader, where: Np, thing: Thing, spoken: Spoken, own: frozenset[SideId]) -> KindId:
    """The kind by which a thing lies: by those of its own side, or by all that there are where it is nobody's."""
    said = whose(reader.game, where).whose
    if said in (Whose.ANY, Whose.ONE_EACH) and (said is Whose.ANY or not _has_each(reader, where)):
        raise Senseless(where, "`{said}`: not every side has them.", write(f"the {where.name.text}"))
    found = reader.thing_phrase(where, spoken, own, *Sort)
    kinds = {each.kind for each in found}
    if len(kinds) > 1 or thing.kind in kinds:
        raise Senseless(where, "`{said}` is not one other kind of things.", "Name one other kind of the kit.")
    kind = found[0].kind
    meant, every = {each.owner for each in found}, {each.owner for each in reader.owned(kind)}
    if said is not Whose.ONE_EACH and meant != every & (every if thing.owner is SHARED else {thing.owner, SHARED}):
        title = "What is put by `{name}` is put by those of its own side."
        raise Senseless(where, title, write(f"the {where.name.text}"), name=where.name.text)
    return kind


def _has_each(reader: Reader, phrase: Np) -> bool:
    """Whether every side has such things."""
    kinds = reader.kinds_meant(phrase, *Sort)
    return {each.owner for kind in kinds for each in reader.owned(kind)} >= reader.all_sides


def read_on_step(reader: Reader, sentence: sides.PlacingOnStep, line: int) -> Iterator[Start]:
    """Things on a step of a track; they are nobody's until they come home."""
    track = TrackId(sentence.track.name.text)
    said = whose(reader.game, sentence.track, place=True)
    if said.whose is not Whose.UNSAID:
        raise Senseless(sentence.track, "A track belongs to nobody.", write(f"the {sentence.track.name.text}"))
    for thing in things_meant(reader, sentence.what):
        if reader.sort(thing.kind) not in (Sort.TARGET, Sort.BODY):
            raise Senseless(sentence.what, "Only targets and big bodies stand on a track.", "Name a target of the kit.")
        yield Start(thing, ALL, OnStep(track, sentence.step.whole), None, (line,))

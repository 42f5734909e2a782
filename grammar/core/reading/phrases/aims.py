"""What is aimed at: things, players, rings, lines, team-mates, ways."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from grammar.core.play import Aim, Along, AtPlayers, AtThing, Order, Past, PickUp, Through, ToMate
from grammar.core.reading.phrases.carrying import with_load
from grammar.core.reading.phrases.claims import where_players_are
from grammar.core.reading.phrases.frozen import is_frozen, mates_frozen
from grammar.core.reading.phrases.tracks import track_start
from grammar.core.reading.phrases.ways import way_between, way_from_hand
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, none_of, whose
from grammar.core.values import (
    SHARED,
    At,
    Landmark,
    Owner,
    Part,
    Population,
    Presence,
    SideId,
    Skill,
    Sort,
    Spot,
    Thing,
)
from grammar.frozen import evolve
from grammar.meanings import MateMeaning, PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences import attempting
from grammar.sentences.base import Np

LINES = (Landmark.BACK_LINE, Landmark.SIDE_LINE, Landmark.MIDDLE_LINE, Landmark.WALL)


def spoken_of(reader: Reader, side: SideId) -> Spoken:
    """Who the words of a play line mean for a side; nobody throws there who could be called the thrower."""
    own = frozenset({side})
    return Spoken(reader.side_ids, own=own, that=None, other=reader.others(side) or own)


def spoken_by(reader: Reader, side: SideId) -> Spoken:
    """Who the words of a play line mean while a side acts."""
    return evolve(spoken_of(reader, side), parts={Whose.ACTOR: frozenset({side})})


def aims_of(
    reader: Reader,
    sentence: attempting.Attempt,
    aim: attempting.Aim,
    who: Population,
    spoken: Spoken,
    load: frozenset[Thing],
) -> Iterator[Aim]:
    """All aims of a phrase: one for each thing, side or line that it means."""
    match aim:
        case attempting.AimAt() if isinstance(reader.game.meaning(aim.what.name), PlayerMeaning):
            if aim.standing_or_not:
                raise Senseless(aim.what, "Players are not {how}.", "Leave that out.", how=aim.standing_or_not)
            for players in at_players(reader, aim.what, who, spoken):
                if meant := with_load(reader, players.of, aim.load):
                    yield AtPlayers(meant)
        case attempting.AimAt():
            if aim.load is not None:
                raise Senseless(aim.load, "Only players carry something.", "Leave that out, or aim at players.")
            for thing in _aimed_at(reader, aim.what, who, spoken, Sort.TARGET, Sort.RING, Sort.BODY):
                ring = reader.sort(thing.kind) is Sort.RING
                falls = not ring and track_start(reader, thing.kind) is None
                if aim.standing_or_not and not falls:
                    title, how = "`{said}` never falls: it is not {how}.", aim.standing_or_not
                    raise Senseless(aim.what, title, "Leave that out.", how=how)
                yield Through(thing) if ring else AtThing(thing, _order(aim.standing_or_not))
        case attempting.AimThrough():
            sorts = open_to(isinstance(aim, attempting.AimInto))
            if not reader.kinds_meant(aim.what, *sorts):
                said = quoting("Nothing goes {aim}.", aim=aim.words())
                raise Senseless(aim.what, said, "Name a ring, or write into (a box), or at (to knock it).")
            for thing in _aimed_at(reader, aim.what, who, spoken, *sorts):
                yield Through(thing, reader.sort(thing.kind) is not Sort.RING)
        case attempting.AimPast():
            yield from (Past(line) for line in _lines(reader, aim.what, who.side, spoken))
        case attempting.AimTo() if goes_on_with_it(sentence, aim):
            yield way_from_hand(reader, sentence, aim, who.side, spoken)
        case attempting.AimTo():
            yield _to_mate(reader, aim, who, spoken)
        case attempting.AimBetween():
            yield way_between(reader, sentence, aim, who.side, spoken, load)
        case _:
            assert_never(aim)


def goes_on_with_it(sentence: attempting.Attempt, aim: attempting.Aim) -> bool:
    """Whether somebody who has the ball goes on with it, from wherever they are: "carry a ball to the far base"."""
    return isinstance(aim, attempting.AimTo) and Skill.CARRY.value in sentence.skills


def open_to(into: bool) -> tuple[Sort, ...]:
    """Through what balls go, or into what."""
    return (Sort.RING, Sort.TARGET) if into else (Sort.RING,)


def _order(said: str | None) -> Order:
    return Order(said) if said else Order.ANY_STANDING


def _aimed_at(reader: Reader, phrase: Np, who: Population, spoken: Spoken, *sorts: Sort) -> tuple[Thing, ...]:
    """The things at which a population aims; nobody aims at their own unless the line says so."""
    said = whose(reader.game, phrase)
    unsaid = reader.others(who.side) or frozenset({who.side})
    found = reader.thing_phrase(phrase, spoken, unsaid, *sorts, some=False)
    if said.whose is Whose.NAMED and len(reader.sides) > 1:
        return tuple(thing for thing in found if thing.owner != who.side)
    return found


def at_players(reader: Reader, phrase: Np, who: Population, spoken: Spoken) -> Iterator[AtPlayers]:
    """The players of a phrase, side by side; nobody aims at those whom their role spares."""
    said, role = reader.player_phrase(phrase)
    alone = len(reader.sides) == 1
    unsaid = reader.all_sides if alone else reader.others(who.side)
    sides = reader.all_sides if alone and said.whose is Whose.NAMED else spoken.meant(said, unsaid)
    for side in reader.side_ids:
        if side not in sides or (side == who.side and said.whose is Whose.NAMED and not alone):
            continue
        of = frozenset(
            each for each in reader.of_role([side], role) if role is not None or not _never_aimed_at(reader, each)
        )
        if of:
            yield AtPlayers(of)


def _never_aimed_at(reader: Reader, who: Population) -> bool:
    return any((role.side, role.id) == (who.side, who.role) and not role.aimed_at for role in reader.roles)


def _lines(reader: Reader, phrase: Np, side: SideId, spoken: Spoken) -> tuple[Spot, ...]:
    of = reader.place(phrase) if not reader.is_kit(phrase) and not _is_player(reader, phrase) else None
    if of not in LINES:
        raise Senseless(phrase, "`{said}` is no line to get past.", write("past the back line"))
    others = reader.others(side) or frozenset({side})
    if of is Landmark.MIDDLE_LINE:
        return (Spot(Landmark.MIDDLE_LINE, SHARED),)
    found = reader.spots(None, phrase, spoken, others)
    said = whose(reader.game, phrase, place=True)
    spared = said.whose is Whose.NAMED or (said.whose is Whose.ANY and said.node is phrase)  # "past any back line"
    return tuple(line for line in found if not spared or line.owner != side or len(reader.sides) == 1)


def _is_player(reader: Reader, phrase: Np) -> bool:
    return isinstance(reader.game.meaning(phrase.name), PlayerMeaning)


def _to_mate(reader: Reader, aim: attempting.AimTo, who: Population, spoken: Spoken) -> ToMate:
    own = frozenset({who.side})
    if is_frozen(reader, aim.what):
        if aim.where is not None:
            raise Senseless(aim.where, "Frozen players are where they froze.", write(f"to {aim.what.words()}"))
        there = mates_frozen(reader, aim.what, who.side, spoken)
        return ToMate(there.who, frozenset(At(spot) for spot in there.at))
    meaning = reader.game.meaning(aim.what.name)
    if isinstance(meaning, MateMeaning):
        said, role = whose(reader.game, aim.what), None
    elif isinstance(meaning, PlayerMeaning):
        said, role = reader.player_phrase(aim.what)
    else:
        raise Senseless(aim.what, "A pass goes to a team-mate.", write("to a team-mate, with the place behind it."))
    if spoken.meant(said, own) != own:
        raise Senseless(aim.what, "A pass goes to a team-mate, not to the other side.", write("to a team-mate"))
    of = frozenset(reader.of_role(own, role))
    if not of:
        raise none_of(aim.what, aim.what.name.text, who.side, write("to a team-mate"))
    at: frozenset[Presence | At] = frozenset({Presence.PLAYING})
    if aim.where is not None and not _where_they_play(reader, aim.where, who.side, spoken):
        at = where_players_are(reader, aim.preposition, aim.where, spoken)
    return ToMate(of, at)


def _where_they_play(reader: Reader, where: Np, side: SideId, spoken: Spoken) -> bool:
    """Whether a phrase is about the part of the court where the side plays: there mates are in play."""
    of = reader.place(where)
    if of not in (Landmark.HALF, Landmark.COURT):
        return False
    if of is Landmark.COURT:
        return True
    return reader.spots("in", where, spoken, frozenset({side}), (Part.AT,)) == (Spot(Landmark.HALF, side),)


def against(aim: Aim, by: Population) -> tuple[Owner, ...]:
    """Whose things or players are aimed at; of a pass, in whose part of the court the team-mate may be."""
    match aim:
        case AtThing() | Through():
            return (aim.thing.owner,)
        case AtPlayers():
            return (next(iter(aim.of)).side,)
        case Past():
            return (aim.line.owner,)
        case ToMate():
            return tuple(dict.fromkeys(part_of_mate(standing, by) for standing in sorted(aim.at, key=repr)))
        case Along() if aim.from_hand:
            return (aim.goal.owner,)
        case Along() | PickUp():
            return (by.side,)


def part_of_mate(standing: Presence | At, by: Population) -> Owner:
    """In whose part of the court a team-mate is who stands so: in one's own, or where an area of a side lies."""
    owner = standing.spot.owner if isinstance(standing, At) else by.side
    return by.side if owner is SHARED else owner

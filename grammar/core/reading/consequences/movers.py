"""Who is moved, and where to: persons of an event, all who play, those who wait."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.clock import AtTime
from grammar.core.fouls import Fouled
from grammar.core.lives import LastLife
from grammar.core.play import Turn, Waiting
from grammar.core.reading.consequences.each_plays import others_of_doer
from grammar.core.reading.events.crossing import (
    how_many_wait,
    never_there,
    not_where_passes_go,
    other_of_several,
    who_wait,
)
from grammar.core.reading.events.events import Moment
from grammar.core.reading.phrases.frozen import froze_at, frozen_ones
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, whose
from grammar.core.rules import ON_A_PLAYER, AllHold, AllPlaying, Happening, KeptFor, Person, Result, Subject
from grammar.core.runs import InARow
from grammar.core.skills import SKILL_WORDS, Skill
from grammar.core.values import SHARED, At, Part, Population, SideId, Spot, Thing
from grammar.frozen import evolve, frozen
from grammar.meanings import AgentMeaning, FrozenMeaning, MateMeaning, PlayerMeaning, SideMeaning
from grammar.said import said, write
from grammar.sentences import queues, then
from grammar.sentences.base import Node, Np
from grammar.sentences.determiners import ALL, ONE
from grammar.words import singulars


@frozen
class Mover:
    """Somebody who is moved, and of which side."""

    who: Subject
    side: SideId | None


KEEPER_OF_IT = "`its keeper` is whoever stands before it: call the role otherwise, such as `guard`, and say: its keeper"


def movers(reader: Reader, who: then.Who, moment: Moment) -> tuple[Mover, ...]:
    """Everybody whom a phrase means: a person of the event, all who play, or who wait."""
    if isinstance(who, queues.Queued | queues.AllQueued):
        return tuple(waiting_of(reader, who, moment, None))
    meaning = reader.game.meaning(who.name)
    if isinstance(moment.trigger, InARow) and not (isinstance(meaning, PlayerMeaning) and who.determiner in ALL):
        raise Senseless(who, "Several have had a part in a row.", "Speak of a side, or of all its players.")
    if isinstance(meaning, FrozenMeaning):
        return tuple(_frozen(reader, who, moment))
    if isinstance(meaning, AgentMeaning):
        return (_agent(who, meaning, moment),)
    if isinstance(meaning, MateMeaning):
        if moment.result is not Result.PASSED or whose(reader.game, who).whose is not Whose.UNSAID:
            raise Senseless(who, "No team-mate is spoken of here.", "Name the thrower, or that player.")
        return (Mover(Person.MATE, moment.actor),)
    if isinstance(meaning, PlayerMeaning | SideMeaning):
        return _players(reader, who, moment)
    raise Senseless(who, "`{said}` is nobody who could be moved.", "Name the thrower, or that player.")


def _frozen(reader: Reader, who: Np, moment: Moment) -> Iterator[Mover]:
    """One of those who froze, or all: without an owner of the side of who acted or caught; by the clock of each."""
    if who.determiner not in (*ALL, *ONE):
        title = "`{said}` does not say how many."
        raise Senseless(who, title, write("a frozen player …", "all frozen players …"))
    default = moment.of_each or _doer(moment)
    unsaid = frozenset({default}) if default else reader.all_sides
    spoken = moment.spoken.of_that_side()
    for waiting in frozen_ones(reader, who, spoken, unsaid):
        of = {each.side for each in waiting.who}
        yield Mover(waiting, of.pop() if len(of) == 1 else None)


def _agent(who: Np, meaning: AgentMeaning, moment: Moment) -> Mover:
    theirs = who.determiner in ("its", "their")
    if who.possessive or who.owner or who.other or (who.determiner in (*ALL, *ONE)):
        raise Senseless(who, "`{said}` is no one person of this event.", write(f"the {who.name.text}"))
    if meaning.part == "owner" or theirs:
        things_of(moment, who)
        return Mover(Person.KEEPER, moment.concerned)
    if meaning.part == "catcher":
        if moment.result is Result.PASSED:
            return Mover(Person.MATE, moment.actor)
        if moment.result is not Result.CAUGHT:
            raise Senseless(who, "Nobody has caught anything here.", "Name the thrower, or that player.")
        return Mover(Person.CATCHER, moment.concerned)
    if moment.actor is None:
        raise Senseless(who, "Nobody has acted here.", "Say all players, or the first in a queue.")
    return Mover(Person.ACTOR, moment.actor)


def _players(reader: Reader, who: Np, moment: Moment) -> tuple[Mover, ...]:
    """ "That player" is who was hit; "all players" are those in play."""
    if who.determiner in ALL:
        return _all_playing(reader, who, moment)
    if who.determiner in ("its", "their"):
        things_of(moment, who)
        found = reader.player_phrase(evolve(who, determiner="the"))
        if found[1] is not None:
            raise Senseless(who, "`{said}`: which of them is not known.", KEEPER_OF_IT)
        if found[0].side not in (None, moment.concerned):
            raise Senseless(who, "`{said}`: it is not theirs.", write("its keeper"))
        return (Mover(Person.KEEPER, moment.concerned),)
    if who.determiner in ONE:
        raise Senseless(who, "`{said}` could be anybody.", write(f"that {who.name.text}"))
    said, role = reader.player_phrase(who)
    trigger = moment.trigger
    if isinstance(trigger, LastLife):
        of = frozenset(reader.of_role(moment.spoken.meant(said, reader.all_sides), role))
        if not trigger.who <= of:
            raise Senseless(who, "Not only {name} lose their last life here.", write("that player"), name=who.name.text)
        return (Mover(Person.OBJECT, moment.concerned),)
    if isinstance(trigger, KeptFor | Fouled):
        return (Mover(Person.ACTOR, moment.actor),)
    if not isinstance(trigger, Happening):
        raise Senseless(who, "`{said}`: nobody has been spoken of.", "Say all players, or the first in a queue.")
    if trigger.result is Result.PASSED and trigger.at and trigger.at <= froze_at(reader):
        return (Mover(Person.MATE, moment.actor),)  # the one frozen player of whom the event speaks
    meant = frozenset(reader.of_role(moment.spoken.meant(said, reader.all_sides), role))
    if trigger.result in ON_A_PLAYER:
        return (_of_both(reader, who, meant, moment, trigger),)
    if trigger.result is Result.CAUGHT and trigger.to and trigger.to <= meant:
        return (Mover(Person.CATCHER, moment.concerned),)
    posted = {At(each.at) for each in reader.starts if each.what in meant and isinstance(each.at, Spot)}
    if trigger.result is Result.PASSED and role is not None and trigger.at and trigger.at <= posted:
        return (Mover(Person.MATE, moment.actor),)
    if trigger.by <= meant and (said.whose is Whose.NAMED or role or trigger.result is Result.ARRIVED):
        return (Mover(Person.ACTOR, moment.actor),)
    if trigger.result is Result.KNOCKED and said.whose is Whose.NAMED and said.side == moment.concerned:
        if who.determiner != "the":
            raise Senseless(who, "`{said}`: of none has been spoken.", write(f"its {who.name.text}"))
        return (Mover(Person.KEEPER, moment.concerned),)
    raise Senseless(who, "`{said}` could be several here.", "Name the thrower, the catcher or the keeper.")


def _of_both(reader: Reader, who: Np, meant: frozenset[Population], moment: Moment, trigger: Happening) -> Mover:
    """Who is touched or hit, or whoever did it where only they are called so."""
    by = trigger.by & reader.touching if trigger.result is Result.TOUCHED else trigger.by
    if by <= meant and does_it(who, trigger.skills):
        return Mover(Person.ACTOR, moment.actor)
    if trigger.to <= meant:
        return Mover(Person.OBJECT, moment.concerned)
    if not by <= meant:
        raise Senseless(
            who,
            "Not only {name}s are {result}.",
            write("that player"),
            name=who.name.text,
            result=said(trigger.result.value),
        )
    return Mover(Person.ACTOR, moment.actor)


def does_it(who: Np, skills: frozenset[Skill]) -> bool:
    """Whether "the thrower" is whoever threw, though all who play are called so: whom it is done to is that player."""
    doers = {SKILL_WORDS[skill].doer for skill in skills}
    return who.determiner == "the" and bool(doers & {who.name.text, *singulars(who.name.text)})


def _all_playing(reader: Reader, who: Np, moment: Moment) -> tuple[Mover, ...]:
    if who.other:
        title = "`{said}`: all but one of them, or all of the other side?"
        raise Senseless(who, title, write("all players of the other side"))
    said, role = reader.player_phrase(who)
    one = None if isinstance(moment.trigger, AllHold | AtTime) else moment.of_each or moment.concerned
    unsaid = frozenset({one}) if one else reader.all_sides
    sides = moment.spoken.meant(said, unsaid)
    left_open = said.whose is Whose.UNSAID and isinstance(moment.trigger, Happening) and len(reader.sides) > 1
    return tuple(
        Mover(AllPlaying(frozenset(reader.of_role([side], role)), left_open), side)
        for side in reader.side_ids
        if side in sides and reader.of_role([side], role)
    )


def waiting_of(
    reader: Reader, who: queues.Queued | queues.AllQueued, moment: Moment, own: SideId | None
) -> Iterator[Mover]:
    """Those in a queue; where the phrase does not say whose: one's `own`, else that of who acted or caught."""
    if isinstance(who, queues.AllQueued) and who.determiner not in ALL:
        raise Senseless(who, "`{said}` does not say how many.", write("all in …", "the first in …"))
    turn = Turn(who.end) if isinstance(who, queues.Queued) else Turn.ALL
    default = own or moment.of_each or _doer(moment)
    unsaid = frozenset({default}) if default else reader.all_sides
    others = others_of_doer(reader, who.where.owner, moment)
    spoken = evolve(moment.spoken, other=others or moment.spoken.other).of_that_side()
    said = whose(reader.game, who.where, place=True)
    shared = reader.owners_of_place(reader.place(who.where)) == (SHARED,)
    if shared and said.whose is not Whose.UNSAID and len(reader.sides) > 1:  # of all who wait there those of a side
        spots: tuple[Spot, ...] = (Spot(reader.place(who.where), SHARED),)
    else:
        spots = reader.spots("in", who.where, spoken, unsaid, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        raise Senseless(
            who.where, "Nobody waits at `{where}`.", "Name a queue, a bench or another area.", where=who.where.words()
        )
    if turn is Turn.ALL and own is None and len(spots) > 1:
        of = frozenset(side for spot in spots for side in who_wait(reader, spot, said, spoken, own, turn))
        yield Mover(Waiting(frozenset(reader.populations(of)), frozenset(spots), turn), None)
        return
    for spot in spots:
        sides = who_wait(reader, spot, said, spoken, own, turn)
        never_there(reader, who, spot, said, spoken, own)
        one = next(iter(sides)) if len(sides) == 1 else None
        players = frozenset(reader.populations(sides))
        yield Mover(Waiting(players, frozenset({spot}), turn, how_many_wait(who, players)), one)


def _doer(moment: Moment) -> SideId | None:
    return moment.concerned if moment.result is Result.CAUGHT else moment.actor


def area_of(reader: Reader, preposition: str | None, where: Np, mover: Mover, moment: Moment) -> At:
    """The area to which somebody goes: their own, where nothing is said."""
    if mover.side is None and isinstance(mover.who, Waiting):
        other_of_several(reader, mover.who.at, whose(reader.game, where, place=True))
    own = frozenset({mover.side}) if mover.side else None
    others = reader.others(mover.side) if mover.side else frozenset()
    spoken = evolve(moment.spoken, own=own, other=others if len(others) == 1 else _against(mover, moment))
    spots = reader.spots(preposition, where, spoken, own or reader.all_sides, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        title = "`{said}` is part of the floor on which all play."
        raise Senseless(where, title, "Name an area of the sheet, or say which side they join.")
    if len(spots) > 1:
        raise Senseless(where, "`{said}` is more than one place.", "Say of which side.")
    if mover.side == moment.actor and whose(reader.game, where, place=True).whose is Whose.UNSAID:
        not_where_passes_go(reader, where, spots[0], moment)
    return At(spots[0])


def _against(mover: Mover, moment: Moment) -> frozenset[SideId] | None:
    """Of several sides the one against somebody in an event: for who is hit or touched that of who did it."""
    if mover.side is None or moment.spoken.other != frozenset({mover.side}):
        return moment.spoken.other
    return frozenset({moment.actor}) if moment.actor not in (None, mover.side) else None


def things_of(moment: Moment, node: Node) -> frozenset[Thing]:
    """The things knocked of which a line says "it". Raises Senseless where nothing is knocked."""
    trigger = moment.trigger
    found = frozenset(each for each in trigger.to if isinstance(each, Thing)) if isinstance(trigger, Happening) else ()
    if not found or moment.result is not Result.KNOCKED:
        raise Senseless(node, "Nothing is knocked here, so that `it` means nothing.", "Say who or what is meant.")
    return frozenset(found)

"""Consequences → effects, for one moment of an event."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from attrs import evolve

from grammar.core.area_kind import AreaKind
from grammar.core.clock import AtTime
from grammar.core.play import Turn, Waiting
from grammar.core.reading.consequences.each_plays import of_its_owner, of_whoever_did_it, others_of_doer
from grammar.core.reading.consequences.loads import gone_back, sent_load, set_down
from grammar.core.reading.consequences.moved_things import has_ball, sent_thing_or_ball, stepped
from grammar.core.reading.consequences.movers import Mover, area_of, movers, things_of
from grammar.core.reading.consequences.stood_up import stood_up
from grammar.core.reading.consequences.swapped import swapped
from grammar.core.reading.consequences.tasks import side_of_toucher, task_named, with_a_task
from grammar.core.reading.events.away import is_away
from grammar.core.reading.events.crossing import other_of_several
from grammar.core.reading.events.events import Moment
from grammar.core.reading.phrases.clock import come_or_go
from grammar.core.reading.phrases.frozen import where_frozen
from grammar.core.reading.phrases.tracks import track_start
from grammar.core.reading.play.lives import lives_changed
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, the_one, whose_side
from grammar.core.rules import (
    ON_A_PLAYER,
    Add,
    AllPlaying,
    Becoming,
    Effect,
    Finish,
    Go,
    Happening,
    Own,
    PlayOn,
    Put,
    Result,
    StartAgain,
)
from grammar.core.values import At, Posture, Presence, SideId, Sort, Spot
from grammar.meanings import PlaceMeaning
from grammar.said import quoting, write
from grammar.sentences import finish, freezing, lives, resting, sets, then, when
from grammar.sentences.ball import HasBall, RestTo
from grammar.sentences.base import AnySide, Np, SideNamed


def effects_of(reader: Reader, consequence: when.Consequence, moment: Moment) -> Iterator[Effect]:
    """The effects of one consequence. Raises Senseless."""
    match consequence:
        case then.StaysDown() | then.StandsUp() | sets.StaysAsItIs():
            yield _fallen(reader, consequence, moment)
        case then.TakenOver():
            things_of(moment, consequence)
            yield Own(_new_owner(reader, consequence.side, moment))
        case then.Steps():
            yield stepped(reader, consequence, moment)
        case then.MovesTo():
            yield from _sent(reader, consequence, moment)
        case HasBall():
            yield from has_ball(reader, consequence, moment)
        case then.Waits() | freezing.Freezes():
            yield from _made_to_wait(reader, consequence, moment)
        case then.Out():
            yield from (Go(mover.who, Presence.OUT) for mover in movers(reader, consequence.who, moment))
        case then.Returns():
            yield from _returned(reader, consequence, moment)
        case then.Joins():
            yield from _joined(reader, consequence, moment)
        case then.TurnsInto():
            yield from with_a_task(reader, consequence, moment)
        case then.ChangesPlaces():
            yield from swapped(reader, consequence, moment)
        case then.Scores():
            yield from _scored(reader, consequence, moment)
        case finish.SideWins():
            yield Finish(_side(reader, consequence.side, moment))
        case finish.SideLoses():
            yield _lost(reader, consequence, moment)
        case lives.LosesLife() | lives.WinsLife():
            whom = (each.who for each in movers(reader, consequence.who, moment))
            yield from lives_changed(reader, consequence, whom, moment.trigger)
        case then.ComesIn() | then.TakenAway() | sets.StandAgain() | then.StartsAgain():
            yield _of_several(reader, consequence, moment)
        case then.GoesBack():
            yield from gone_back(reader, consequence, moment)
        case then.Drops():
            yield from set_down(reader, consequence, moment)
        case then.PlaysOn():
            yield from _nothing_changes(consequence, moment)
        case _:
            assert_never(consequence)


def _of_several(
    reader: Reader, consequence: then.ComesIn | then.TakenAway | sets.StandAgain | then.StartsAgain, moment: Moment
) -> Effect:
    if isinstance(consequence, then.StartsAgain):
        return StartAgain.EVERYTHING
    if isinstance(consequence, sets.StandAgain):
        return stood_up(reader, consequence, moment)
    return come_or_go(reader, consequence, moment.trigger)


def _nothing_changes(consequence: then.PlaysOn, moment: Moment) -> Iterator[PlayOn]:
    if isinstance(moment.trigger, AtTime):
        raise Senseless(consequence, "Then nothing happens at this time.", "Say what does, or leave it out.")
    if moment.result in (*ON_A_PLAYER, Result.CAUGHT):
        yield PlayOn.PLAY_ON


def _scored(reader: Reader, consequence: then.Scores, moment: Moment) -> Iterator[Effect]:
    points = consequence.points.whole * (1 if consequence.verb == "scores" else -1)
    owner = of_its_owner(reader, consequence, moment)
    by_task = isinstance(consequence.side, SideNamed) and task_named(reader, consequence.side) is not None
    side = consequence.side if owner or by_task else of_whoever_did_it(reader, consequence, moment)
    yield from (Add(each, points, owner=owner) for each in _sides(reader, side, moment))


def _made_to_wait(reader: Reader, consequence: then.Waits | freezing.Freezes, moment: Moment) -> Iterator[Go]:
    if isinstance(consequence, freezing.Freezes):
        yield from _frozen(reader, consequence, moment)
        return
    for mover in movers(reader, consequence.who, moment):
        yield Go(mover.who, area_of(reader, consequence.preposition, consequence.where, mover, moment))


def _frozen(reader: Reader, consequence: freezing.Freezes, moment: Moment) -> Iterator[Go]:
    """Whoever plays freezes; who waits somewhere stands still anyway."""
    for mover in movers(reader, consequence.who, moment):
        if isinstance(mover.who, Waiting) or is_away(mover.who, moment) or mover.side is None:
            title = "`{said}` waits: only who plays freezes."
            raise Senseless(consequence.who, title, write("that player freezes"))
        yield Go(mover.who, At(where_frozen(mover.side)))


def _fallen(reader: Reader, consequence: then.StaysDown | then.StandsUp | sets.StaysAsItIs, moment: Moment) -> Put:
    if all(track_start(reader, thing.kind) for thing in things_of(moment, consequence)):
        raise Senseless(consequence, "What stands on a track does not fall.", "Say how many steps it moves.")
    posture = Posture.DOWN if isinstance(consequence, then.StaysDown) else Posture.UP
    return Put(posture, isinstance(consequence, sets.StaysAsItIs))


def _lost(reader: Reader, consequence: finish.SideLoses, moment: Moment) -> Finish:
    others = reader.others(_side(reader, consequence.side, moment))
    if len(others) != 1:
        title = quoting("{number} sides are left, of which none has won.", number=len(others))
        raise Senseless(consequence, title, "Say which side wins.")
    return Finish(next(iter(others)))


def _sides(reader: Reader, phrase: AnySide, moment: Moment) -> tuple[SideId, ...]:
    if isinstance(phrase, SideNamed) and (task := task_named(reader, phrase)) is not None:
        return (side_of_toucher(reader, phrase, task, moment),)
    said = whose_side(reader.game, phrase)
    if said.whose is Whose.ANY:
        raise Senseless(phrase, "`{said}` could be any side here.", write("the thrower's side"))
    found = others_of_doer(reader, phrase, moment) or moment.spoken.meant(said, frozenset())
    return tuple(side for side in reader.side_ids if side in found)


def _new_owner(reader: Reader, phrase: AnySide, moment: Moment) -> SideId:
    """Whom a thing joins: "the other side" is one whose it is not yet, of several that which did it."""
    owners = moment.trigger.against if isinstance(moment.trigger, Happening) else frozenset()
    for owner in owners if whose_side(reader.game, phrase).whose is Whose.OTHER and len(owners) == 1 else ():
        if isinstance(owner, SideId):
            others = reader.others(owner)
            others = others & {moment.actor} if len(others) > 1 else others
            return the_one(whose_side(reader.game, phrase), others)
    return _side(reader, phrase, moment)


def _side(reader: Reader, phrase: AnySide, moment: Moment) -> SideId:
    return the_one(whose_side(reader.game, phrase), frozenset(_sides(reader, phrase, moment)))


def _sent(reader: Reader, consequence: then.MovesTo, moment: Moment) -> Iterator[Effect]:
    who, place = consequence.who, consequence.place
    if isinstance(who, Np) and reader.kinds_meant(who, Sort.LOAD) and moment.result in ON_A_PLAYER:
        yield from sent_load(reader, who, place, moment)
        return
    if isinstance(who, Np) and reader.is_kit(who):
        yield from sent_thing_or_ball(reader, who, place, moment)
        return
    if not isinstance(place, RestTo | resting.RestThere):
        raise Senseless(place, "Players go to an area of the sheet.", "Name a bench, a queue or another area.")
    preposition = place.preposition if isinstance(place, resting.RestThere) else None
    for mover in movers(reader, who, moment):
        yield Go(mover.who, area_of(reader, preposition, place.where, mover, moment))


def _returned(reader: Reader, consequence: then.Returns, moment: Moment) -> Iterator[Go]:
    for mover in movers(reader, consequence.who, moment):
        if isinstance(mover.who, AllPlaying):
            kinds = (AreaKind.QUEUE, AreaKind.BENCH)
            at = frozenset(Spot(area.id, area.owner) for area in reader.areas if area.kind in kinds)
            if not at:
                raise Senseless(consequence, "There is nowhere to return from.", "Say in space where players wait.")
            yield Go(Waiting(mover.who.who, at, Turn.ALL), Presence.PLAYING)
            continue
        if not isinstance(mover.who, Waiting) and not is_away(mover.who, moment):
            raise Senseless(consequence.who, "`{said}` is in play already.", "Name the first in a queue.")
        yield Go(mover.who, Presence.PLAYING)


def _joined(reader: Reader, consequence: then.Joins, moment: Moment) -> Iterator[Go]:
    what = consequence.what
    for mover in movers(reader, consequence.who, moment):
        if isinstance(what, Np) and isinstance(reader.game.meaning(what.name), PlaceMeaning):
            yield Go(mover.who, area_of(reader, None, what, mover, moment))
            continue
        side = _joined_side(reader, what, mover, moment)
        yield Go(mover.who, Presence.PLAYING, Becoming(side=side))


def _joined_side(reader: Reader, what: Np | AnySide, mover: Mover, moment: Moment) -> SideId:
    if isinstance(what, Np):
        said, role = reader.player_phrase(what)
        if role or said.side is None:
            raise Senseless(what, "`{said}` is no side.", write("joins the other side"))
        return said.side
    said = whose_side(reader.game, what)
    if mover.side is None and isinstance(mover.who, Waiting):
        other_of_several(reader, mover.who.at, said)
    spoken = moment.spoken
    if said.whose is Whose.OTHER and mover.side is not None:
        others = reader.others(mover.side)
        of_event = frozenset(side for side in (moment.actor, moment.concerned) if side) - {mover.side}
        one = of_event if len(others) > 1 else others
        spoken = evolve(spoken, other=one if len(one) == 1 else None)
    return the_one(said, spoken.meant(said, frozenset()))

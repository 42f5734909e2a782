"""Consequences → effects, for one moment of an event."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve, frozen

from grammar.core.game import AreaKind
from grammar.core.play import Turn, Waiting
from grammar.core.read_claims import track_start
from grammar.core.read_events import Moment
from grammar.core.read_services import resting_place
from grammar.core.reader import Reader
from grammar.core.rules import (
    Add,
    AllHold,
    AllPlaying,
    Becomes,
    Becoming,
    Effect,
    Finish,
    Go,
    Happening,
    KeptFor,
    Own,
    Person,
    PlayOn,
    Put,
    PutOnStep,
    Result,
    SendBall,
    SendBalls,
    Shift,
    StartAgain,
    Subject,
    Swap,
)
from grammar.core.values import (
    SHARED,
    At,
    OnStep,
    Part,
    Population,
    Posture,
    Presence,
    RoleId,
    SideId,
    Sort,
    Spot,
    Thing,
    TrackId,
)
from grammar.core.whose import Claimed, Senseless, Spoken, Whose, the_one, whose, whose_side
from grammar.meanings import AgentMeaning, MateMeaning, PlaceMeaning, PlayerMeaning, SideMeaning, side_named
from grammar.sentences import finish, play, when
from grammar.sentences.base import AnySide, Node, Np


@frozen
class Mover:
    """Somebody who is moved, and of which side."""

    who: Subject
    side: SideId | None


def effects_of(reader: Reader, consequence: when.Consequence, moment: Moment) -> Iterator[Effect]:
    """The effects of one consequence. Raises Senseless."""
    match consequence:
        case when.StaysDown() | when.StandsUp():
            things = _things(moment, consequence)
            if all(track_start(reader, thing.kind) for thing in things):
                raise Senseless(consequence, "What stands on a track does not fall.", "Write: it moves 1 step …")
            yield Put(Posture.DOWN if isinstance(consequence, when.StaysDown) else Posture.UP)
        case when.TakenOver():
            side = _side(reader, consequence.side, moment)
            if any(thing.owner != side for thing in _things(moment, consequence)):
                yield Own(side)
        case when.Steps():
            yield _stepped(reader, consequence, moment)
        case when.MovesTo():
            yield from _sent(reader, consequence, moment)
        case when.Waits():
            for mover in movers(reader, consequence.who, moment):
                yield Go(mover.who, _area(reader, consequence.preposition, consequence.where, mover, moment))
        case when.Out():
            yield from (Go(mover.who, Presence.OUT) for mover in movers(reader, consequence.who, moment))
        case when.Returns():
            yield from _returned(reader, consequence, moment)
        case when.Joins():
            yield from _joined(reader, consequence, moment)
        case when.TurnsInto():
            for mover in movers(reader, consequence.who, moment):
                yield Go(mover.who, Presence.PLAYING, Becoming(role=_role(reader, consequence.role, mover)))
        case when.ChangesPlaces():
            yield from _swapped(reader, consequence, moment)
        case when.Scores():
            sign = 1 if consequence.verb == "scores" else -1
            for side in _sides(reader, consequence.side, moment):
                yield Add(side, sign * consequence.points.whole)
        case finish.SideWins():
            yield Finish(_side(reader, consequence.side, moment))
        case when.SideLoses():
            loser = _side(reader, consequence.side, moment)
            others = reader.others(loser)
            if len(others) != 1:
                raise Senseless(consequence, f"{len(others)} sides are left; who has won?", "Say which side wins.")
            yield Finish(next(iter(others)))
        case when.StartsAgain():
            yield StartAgain.EVERYTHING
        case when.PlaysOn():
            if moment.result is Result.HIT:
                yield PlayOn.PLAY_ON


# ---- sides ------------------------------------------------------------------------------------------


def _sides(reader: Reader, phrase: AnySide, moment: Moment) -> tuple[SideId, ...]:
    said = whose_side(reader.game, phrase)
    if said.whose is Whose.ANY:
        raise Senseless(phrase, f"Which side is `{phrase.words()}` here?", "Write: the thrower's side")
    found = moment.spoken.meant(said, frozenset())
    return tuple(side for side in reader.side_ids if side in found)


def _side(reader: Reader, phrase: AnySide, moment: Moment) -> SideId:
    return the_one(whose_side(reader.game, phrase), frozenset(_sides(reader, phrase, moment)), "it is")


# ---- who is moved -----------------------------------------------------------------------------------


def movers(reader: Reader, who: when.Who, moment: Moment) -> tuple[Mover, ...]:
    """Everybody whom a phrase means: a person of the event, all who play, or who wait."""
    if isinstance(who, play.Queued | play.AllQueued):
        return tuple(_waiting(reader, who, moment, None))
    meaning = reader.game.meaning(who.name)
    if isinstance(meaning, AgentMeaning):
        return (_agent(who, meaning, moment),)
    if isinstance(meaning, MateMeaning):
        if moment.result is not Result.PASSED or whose(reader.game, who).whose is not Whose.UNSAID:
            raise Senseless(who, "No team-mate is spoken of here.", "Name the thrower, or that player.")
        return (Mover(Person.MATE, moment.actor),)
    if isinstance(meaning, PlayerMeaning | SideMeaning):
        return _players(reader, who, moment)
    raise Senseless(who, f"`{who.words()}` is nobody who could be moved.", "Name the thrower, or that player.")


def _agent(who: Np, meaning: AgentMeaning, moment: Moment) -> Mover:
    theirs = who.determiner in ("its", "their")
    if who.possessive or who.owner or who.other or (who.determiner in ("each", "every", "all", "any")):
        raise Senseless(who, f"Who is `{who.words()}`?", f"Write: the {who.name.text}")
    if meaning.part == "owner" or theirs:
        _things(moment, who)
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
    if who.determiner in ("all", "every", "each"):
        return _all_playing(reader, who, moment)
    if who.determiner in ("its", "their"):
        _things(moment, who)
        found = reader.player_phrase(evolve(who, determiner="the"))
        if found[0].side not in (None, moment.concerned):
            raise Senseless(who, f"`{who.words()}`: it is not theirs.", "Write: its keeper")
        return (Mover(Person.KEEPER, moment.concerned),)
    said, role = reader.player_phrase(who)
    trigger = moment.trigger
    if isinstance(trigger, KeptFor):
        return (Mover(Person.ACTOR, moment.actor),)
    if not isinstance(trigger, Happening):
        raise Senseless(who, f"Who is `{who.words()}`?", "Say all players, or the first in a queue.")
    meant = frozenset(reader.of_role(moment.spoken.meant(said, reader.all_sides), role))
    if trigger.result is Result.HIT:
        if not trigger.to <= meant:
            raise Senseless(who, f"Not only {who.name.text}s are hit.", "Write: that player")
        return (Mover(Person.OBJECT, moment.concerned),)
    if trigger.by <= meant and (said.whose is Whose.NAMED or role or trigger.result is Result.ARRIVED):
        return (Mover(Person.ACTOR, moment.actor),)
    if trigger.result is Result.KNOCKED and said.whose is Whose.NAMED and said.side == moment.concerned:
        return (Mover(Person.KEEPER, moment.concerned),)
    raise Senseless(who, f"Who is `{who.words()}` here?", "Name the thrower, the catcher or the keeper.")


def _all_playing(reader: Reader, who: Np, moment: Moment) -> tuple[Mover, ...]:
    said, role = reader.player_phrase(who)
    if isinstance(moment.trigger, AllHold):
        unsaid = reader.all_sides
    else:
        one = moment.of_each or moment.concerned
        unsaid = frozenset({one}) if one else reader.all_sides
    sides = moment.spoken.meant(said, unsaid)
    return tuple(
        Mover(AllPlaying(frozenset(reader.of_role([side], role))), side)
        for side in reader.side_ids
        if side in sides and reader.of_role([side], role)
    )


def _waiting(reader: Reader, who: play.Queued | play.AllQueued, moment: Moment, own: SideId | None) -> Iterator[Mover]:
    """Those in a queue; where the phrase does not say whose: one's `own`, else that of who acted or caught."""
    if isinstance(who, play.AllQueued) and who.determiner not in ("all", "every", "each"):
        raise Senseless(who, f"How many are `{who.words()}`?", "Write: all in …, or the first in …")
    turn = Turn(who.end) if isinstance(who, play.Queued) else Turn.ALL
    default = own or moment.of_each or _doer(moment)
    unsaid = frozenset({default}) if default else reader.all_sides
    spoken = evolve(moment.spoken, own=moment.spoken.own or moment.spoken.that)
    said = whose(reader.game, who.where, place=True)
    shared = reader.owners_of_place(reader.place(who.where)) == (SHARED,)
    if shared and said.whose is not Whose.UNSAID:
        spots: tuple[Spot, ...] = (Spot(reader.place(who.where), SHARED),)
    else:
        spots = reader.spots("in", who.where, spoken, unsaid, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        raise Senseless(who.where, f"Nobody waits at `{who.where.words()}`.", "Name a queue, a bench or another area.")
    for spot in spots:
        sides = _of_queue(reader, spot, said, spoken, own)
        one = next(iter(sides)) if len(sides) == 1 else None
        yield Mover(Waiting(frozenset(reader.populations(sides)), frozenset({spot}), turn), one)


def _of_queue(reader: Reader, spot: Spot, said: Claimed, spoken: Spoken, own: SideId | None) -> frozenset[SideId]:
    """The sides whose players are meant: whoever waits there, unless the queue is shared and one side is named."""
    if own is not None:
        return frozenset({own})
    if isinstance(spot.owner, SideId):
        return reader.all_sides if _strangers(reader, spot) else frozenset({spot.owner})
    return spoken.meant(said, reader.all_sides)


def _strangers(reader: Reader, spot: Spot) -> bool:
    """Whether the set-up puts players of another side there."""
    return any(
        isinstance(start.what, Population) and start.at == spot and start.what.side != spot.owner
        for start in reader.starts
    )


def _doer(moment: Moment) -> SideId | None:
    return moment.concerned if moment.result is Result.CAUGHT else moment.actor


# ---- where to ---------------------------------------------------------------------------------------


def _area(reader: Reader, preposition: str | None, where: Np, mover: Mover, moment: Moment) -> At:
    """The area to which somebody goes: their own, where nothing is said."""
    own = frozenset({mover.side}) if mover.side else None
    others = reader.others(mover.side) if mover.side else frozenset()
    other = others if len(others) == 1 else moment.spoken.other
    spoken = evolve(moment.spoken, own=own, other=other)
    spots = reader.spots(preposition, where, spoken, own or reader.all_sides, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        raise Senseless(
            where,
            f"`{where.words()}` is part of the floor on which all play.",
            "Name an area of the sheet, or say which side they join.",
        )
    if len(spots) > 1:
        raise Senseless(where, f"`{where.words()}` is more than one place.", "Say of which side.")
    return At(spots[0])


def _sent(reader: Reader, consequence: when.MovesTo, moment: Moment) -> Iterator[Effect]:
    who, place = consequence.who, consequence.place
    if isinstance(who, Np) and reader.is_kit(who):
        yield from _thing_or_ball(reader, who, place, moment)
        return
    if not isinstance(place, play.RestTo | play.RestThere):
        raise Senseless(place, "Players go to an area of the sheet.", "Name a bench, a queue or another area.")
    preposition = place.preposition if isinstance(place, play.RestThere) else None
    for mover in movers(reader, who, moment):
        yield Go(mover.who, _area(reader, preposition, place.where, mover, moment))


def _thing_or_ball(reader: Reader, who: Np, place: play.RestingPlace, moment: Moment) -> Iterator[Effect]:
    if not reader.kinds_meant(who, Sort.BALL):
        yield _put_on_step(reader, who, place, moment)
        return
    balls = frozenset(reader.balls(evolve(who, determiner="the") if who.determiner == "their" else who))
    trigger = moment.trigger
    all_of_them = who.determiner in ("all", "every", "each")
    actor = moment.actor or moment.of_each or (reader.side_ids[0] if len(reader.sides) == 1 else None)
    if actor is None:
        raise Senseless(place, "Where that is depends on a side, and none is spoken of.", "Speak of a side.")
    other = moment.spoken.other
    against = next(iter(other)) if other and len(other) == 1 else (moment.concerned or actor)
    if isinstance(trigger, Happening) and len(trigger.against) == 1:
        owner = next(iter(trigger.against))
        against = owner if isinstance(owner, SideId) and trigger.result is not Result.PASSED else against
    to, _ = resting_place(reader, place, actor, against, moment.result or Result.MISSED)
    if all_of_them or isinstance(trigger, Becomes | AllHold):
        yield SendBalls(balls, to, all_of_them)
        return
    used = trigger.balls if isinstance(trigger, Happening | KeptFor) else frozenset()
    if not used & balls:
        raise Senseless(who, f"`{who.words()}` is not the ball of this event.", "Write: the ball")
    yield SendBall(to)


def _put_on_step(reader: Reader, who: Np, place: play.RestingPlace, moment: Moment) -> PutOnStep:
    if not isinstance(place, play.RestOnStep):
        raise Senseless(place, "A thing that stands goes nowhere, unless along a track.", "Write: to step 3 of the …")
    meaning = reader.game.meaning(place.where.name)
    track = TrackId(meaning.place) if isinstance(meaning, PlaceMeaning) else None
    kinds = reader.kinds_meant(who, Sort.TARGET, Sort.BODY)
    starts = [(kind, track_start(reader, kind)) for kind in kinds]
    fitting = [kind for kind, start in starts if start is not None and start.track == track]
    if track is None or len(fitting) != 1:
        raise Senseless(place.where, f"`{who.words()}` is not on `{place.where.words()}`.", "Name its track.")
    known = next(each for each in reader.tracks if each.id == track)
    if not 0 <= place.step.whole <= known.steps:
        raise Senseless(place.step, f"That track has steps 0 to {known.steps}.", "Write one of these.")
    thing = reader.owned(fitting[0])[0]
    to = OnStep(track, place.step.whole)
    if isinstance(moment.trigger, Happening):
        if thing not in moment.trigger.to:
            raise Senseless(who, f"`{who.words()}` is not what was knocked.", "Name that.")
        return PutOnStep(thing, to, None)
    if moment.of_each not in known.homes:
        raise Senseless(who, f"Which `{who.name.text}`?", "Speak of a side that has it at home.")
    return PutOnStep(thing, to, OnStep(track, 0 if moment.of_each == known.homes[0] else known.steps))


def _stepped(reader: Reader, consequence: when.Steps, moment: Moment) -> Shift:
    """Towards one home is away from the other."""
    homes = {
        track.homes
        for thing in _things(moment, consequence)
        for track in reader.tracks
        if (start := track_start(reader, thing.kind)) and start.track == track.id
    }
    if len(homes) != 1:
        raise Senseless(consequence, "It stands on no track.", 'Put it on one: "… on step 3 of the … track".')
    toward = _home_meant(reader, consequence.towards, moment)
    first, last = next(iter(homes))
    if toward not in (first, last):
        raise Senseless(consequence.towards, f"{toward.key} has no home on that track.", "Name one of its two sides.")
    near = consequence.direction == "towards"
    return Shift(consequence.by.whole * (1 if (toward == last) == near else -1))


def _home_meant(reader: Reader, phrase: Np, moment: Moment) -> SideId:
    meaning = reader.game.meaning(phrase.name)
    if isinstance(meaning, PlaceMeaning):
        own = evolve(moment.spoken, own=moment.spoken.parts.get(Whose.ACTOR))
        spots = reader.spots("in", phrase, own, frozenset())
        owners = {spot.owner for spot in spots}
        side = next(iter(owners)) if len(owners) == 1 else None
    elif (named := side_named(meaning)) and phrase.determiner != "all":
        side = SideId(named)
    else:
        found = movers(reader, phrase, moment)
        side = found[0].side if len(found) == 1 else None
    if not isinstance(side, SideId):
        raise Senseless(phrase, f"Whose home is `{phrase.words()}`?", "Write: towards the thrower")
    return side


# ---- the rest ---------------------------------------------------------------------------------------


def _things(moment: Moment, node: Node) -> frozenset[Thing]:
    trigger = moment.trigger
    found = frozenset(each for each in trigger.to if isinstance(each, Thing)) if isinstance(trigger, Happening) else ()
    if not found or moment.result is not Result.KNOCKED:
        raise Senseless(node, "Nothing is knocked here, so that `it` means nothing.", "Say who or what is meant.")
    return frozenset(found)


def _returned(reader: Reader, consequence: when.Returns, moment: Moment) -> Iterator[Go]:
    for mover in movers(reader, consequence.who, moment):
        if isinstance(mover.who, AllPlaying):
            kinds = (AreaKind.QUEUE, AreaKind.BENCH)
            at = frozenset(Spot(area.id, area.owner) for area in reader.areas if area.kind in kinds)
            if not at:
                raise Senseless(consequence, "There is nowhere to return from.", "Say in space where players wait.")
            yield Go(Waiting(mover.who.who, at, Turn.ALL), Presence.PLAYING)
            continue
        away = isinstance(mover.who, Waiting) or (mover.who is Person.MATE and _mate_is_away(moment))
        if not away:
            raise Senseless(
                consequence.who, f"`{consequence.who.words()}` is in play already.", "Name the first in a queue."
            )
        yield Go(mover.who, Presence.PLAYING)


def _mate_is_away(moment: Moment) -> bool:
    return (
        isinstance(moment.trigger, Happening) and Presence.PLAYING not in moment.trigger.at and bool(moment.trigger.at)
    )


def _joined(reader: Reader, consequence: when.Joins, moment: Moment) -> Iterator[Go]:
    what = consequence.what
    for mover in movers(reader, consequence.who, moment):
        if isinstance(what, Np) and isinstance(reader.game.meaning(what.name), PlaceMeaning):
            yield Go(mover.who, _area(reader, None, what, mover, moment))
            continue
        side = _joined_side(reader, what, mover, moment)
        if side != mover.side:
            yield Go(mover.who, Presence.PLAYING, Becoming(side=side))


def _joined_side(reader: Reader, what: Np | AnySide, mover: Mover, moment: Moment) -> SideId:
    if isinstance(what, Np):
        said, role = reader.player_phrase(what)
        if role or said.side is None:
            raise Senseless(what, f"`{what.words()}` is no side.", "Write: joins the other side")
        return said.side
    said = whose_side(reader.game, what)
    spoken = moment.spoken
    if said.whose is Whose.OTHER and mover.side is not None:
        others = reader.others(mover.side)
        of_event = frozenset(side for side in (moment.actor, moment.concerned) if side) - {mover.side}
        one = of_event if len(others) > 1 else others
        spoken = evolve(spoken, other=one if len(one) == 1 else None)
    return the_one(said, spoken.meant(said, frozenset()), "it is")


def _role(reader: Reader, phrase: Np, mover: Mover) -> RoleId:
    said, role = reader.player_phrase(phrase)
    if role is None or mover.side is None:
        raise Senseless(phrase, f"`{phrase.words()}` is no role.", "Name a role that `sides` declares.")
    if said.side not in (None, mover.side) or not reader.of_role([mover.side], role):
        raise Senseless(phrase, f"{mover.side.key} has no {phrase.name.text}.", "Name a role of that side.")
    return role


def _swapped(reader: Reader, consequence: when.ChangesPlaces, moment: Moment) -> Iterator[Swap]:
    who, other = consequence.who, consequence.other
    if isinstance(who, Np) and isinstance(other, play.Queued | play.AllQueued):
        for mover in movers(reader, who, moment):
            assert not isinstance(mover.who, Waiting)
            if isinstance(mover.who, AllPlaying) != isinstance(other, play.AllQueued):
                raise Senseless(consequence, "One changes with one, all with all.", "Write: all … with all in …")
            for waiting in _waiting(reader, other, moment, mover.side):
                assert isinstance(waiting.who, Waiting)
                yield Swap(mover.who, waiting.who)
        return
    if isinstance(who, Np) and isinstance(other, Np):
        pair = {mover.who for phrase in (who, other) for mover in movers(reader, phrase, moment)}
        if pair == {Person.ACTOR, Person.MATE} and _mate_is_away(moment):
            yield Swap(Person.ACTOR, Person.MATE)
            return
    raise Senseless(consequence, "These cannot change places.", "Write: that player changes places with the first in …")

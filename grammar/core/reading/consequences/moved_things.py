"""What becomes of things and balls: they fall, change owners, move along a track, come to lie somewhere."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.clock import AtTime
from grammar.core.declared import Cut
from grammar.core.fouls import Fouled
from grammar.core.reading.consequences.movers import movers, things_of
from grammar.core.reading.events.events import Moment
from grammar.core.reading.phrases.tracks import track_start
from grammar.core.reading.play.possession import side_of_place, with_side
from grammar.core.reading.play.services import resting_place
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose_side
from grammar.core.rules import (
    AllHold,
    Becomes,
    Effect,
    Happening,
    KeptFor,
    PutOnStep,
    Result,
    SendBall,
    SendBalls,
    Shift,
)
from grammar.core.runs import InARow
from grammar.core.values import KindId, Landmark, OnStep, Owner, SideId, Sort, Spot, Thing, TrackId
from grammar.meanings import PlaceMeaning, side_named
from grammar.said import quoting, write
from grammar.sentences import resting, then
from grammar.sentences.ball import HasBall
from grammar.sentences.base import Np
from grammar.sentences.determiners import ALL


def sent_thing_or_ball(reader: Reader, who: Np, place: resting.RestingPlace, moment: Moment) -> Iterator[Effect]:
    """What a line sends somewhere: a thing along its track, the ball of the event, or all balls."""
    loads = frozenset(reader.kinds_meant(who, Sort.LOAD))
    if not loads and not reader.kinds_meant(who, Sort.BALL):
        yield _put_on_step(reader, who, place, moment)
        return
    if isinstance(place, resting.RestInside):
        yield _inside(reader, who, place, moment)
        return
    balls = loads or frozenset(reader.balls(evolve(who, determiner="the") if who.determiner == "their" else who))
    named = side_of_place(reader.game, place)
    if named is not None:
        yield _given(reader, who, balls, with_side(reader, named, _spoken_of_ball(moment), balls), moment)
        return
    trigger, missed = moment.trigger, frozenset({Result.MISSED})
    actor = moment.actor or moment.of_each or (reader.side_ids[0] if len(reader.sides) == 1 else None)
    if actor is None and len({resting_place(reader, place, each, each, missed)[0] for each in reader.side_ids}) == 1:
        actor = reader.side_ids[0]  # a place that all share
    if actor is None:
        raise Senseless(place, "Where that is depends on a side, and none is spoken of.", "Speak of a side.")
    other = moment.spoken.other
    against = next(iter(other)) if other and len(other) == 1 else (moment.concerned or actor)
    if isinstance(trigger, Happening) and len(trigger.against) == 1:
        owner = next(iter(trigger.against))
        against = owner if isinstance(owner, SideId) and trigger.result is not Result.PASSED else against
    own = moment.spoken.of_that_side().own
    to, _ = resting_place(reader, place, actor, against, frozenset({moment.result}) if moment.result else missed, own)
    yield _given(reader, who, balls, to, moment)


def _inside(reader: Reader, who: Np, place: resting.RestInside, moment: Moment) -> SendBall | SendBalls:
    """Where a ball stays that went into something: nobody takes it out again."""
    trigger = moment.trigger
    into = trigger.to if isinstance(trigger, Happening) and trigger.result is Result.THROUGH else frozenset()
    things = [each for each in into if isinstance(each, Thing) and reader.sort(each.kind) is not Sort.RING]
    if not things or not reader.kinds_meant(who, Sort.BALL):
        title = "`{said}` is said of a ball that went into something, such as a box or a goal."
        hint = write("a ball goes into a pail: the ball stays there")
        raise Senseless(place, title, hint, said=f"{who.words()} stays there")
    balls = frozenset(reader.balls(who))
    return _given(reader, who, balls, Spot(Landmark.INSIDE, things[0].owner), moment)


def _spoken_of_ball(moment: Moment) -> Spoken:
    """Who the words mean of the ball of an event: whoever is touched has it, so that the other side is who did it."""
    if moment.result is not Result.TOUCHED or moment.actor is None:
        return moment.spoken
    return evolve(moment.spoken, other=frozenset({moment.actor}))


def _given(reader: Reader, who: Np, balls: frozenset[KindId], to: Spot, moment: Moment) -> SendBall | SendBalls:
    """The ball of the event, or balls wherever they lie."""
    trigger = moment.trigger
    all_of_them = who.determiner in ALL
    if not all_of_them and any(reader.sort(kind) is Sort.LOAD for kind in balls):
        hint = write("all of them; or say it of a player who carries one.")
        raise Senseless(who, "`{said}`: of no one of them has been spoken here.", hint)
    if isinstance(trigger, InARow | Fouled) and not all_of_them and _several(reader, balls):
        return _one_that_they_have(reader, who, balls, to, moment)
    if all_of_them or isinstance(trigger, Becomes | AllHold | AtTime | InARow | Fouled):
        return SendBalls(balls, to, all_of_them)
    used = trigger.balls if isinstance(trigger, Happening | KeptFor) else frozenset()
    if isinstance(trigger, Happening) and trigger.result is Result.TOUCHED:
        used = trigger.holding or reader.chased_for
        if not used:
            title = "`{said}`: of no ball has been spoken here."
            raise Senseless(who, title, write("a player who carries a ball is touched, and so in the line of the play"))
    if not used & balls:
        raise Senseless(who, "`{said}` is not the ball of this event.", write("the ball"))
    return SendBall(to)


def _several(reader: Reader, balls: frozenset[KindId]) -> bool:
    return sum(supply.count for supply in reader.supplies if supply.thing.kind in balls) > 1


def _one_that_they_have(reader: Reader, who: Np, balls: frozenset[KindId], to: Spot, moment: Moment) -> SendBalls:
    """Of several balls one that the side of whoever fouled, or passed last, has. Raises Senseless."""
    if len(balls) > 1:
        title = "`{said}`: of several kinds of balls it is not known which they have."
        raise Senseless(who, title, quoting("Name the kind, such as: a {ball}", ball=sorted(balls)[0].key))
    if reader.court.cut is Cut.WHOLE and not reader.held:
        title = "`{said}`: with several balls on a court for all it is not known which of them."
        raise Senseless(who, title, "Say at the start which side has how many, or: all balls go to the middle")
    return SendBalls(balls, to, False, moment.actor)


def has_ball(reader: Reader, consequence: HasBall, moment: Moment) -> Iterator[Effect]:
    """ "The other side has the ball": it goes there."""
    said = whose_side(reader.game, consequence.side)
    balls = frozenset(reader.balls(consequence.ball))
    yield _given(reader, consequence.ball, balls, with_side(reader, said, _spoken_of_ball(moment), balls), moment)


def _put_on_step(reader: Reader, who: Np, place: resting.RestingPlace, moment: Moment) -> PutOnStep:
    if not isinstance(place, resting.RestOnStep):
        raise Senseless(place, "A thing that stands goes nowhere, unless along a track.", write("to step 3 of the …"))
    meaning = reader.game.meaning(place.where.name)
    track = TrackId(meaning.place) if isinstance(meaning, PlaceMeaning) else None
    kinds = reader.kinds_meant(who, Sort.TARGET, Sort.BODY)
    starts = [(kind, track_start(reader, kind)) for kind in kinds]
    fitting = [kind for kind, start in starts if start is not None and start.track == track]
    if track is None or len(fitting) != 1:
        raise Senseless(
            place.where, "`{said}` is not on `{where}`.", "Name its track.", said=who.words(), where=place.where.words()
        )
    known = next(each for each in reader.tracks if each.id == track)
    if not 0 <= place.step.whole <= known.steps:
        raise Senseless(place.step, "That track has steps 0 to {steps}.", "Write one of these.", steps=known.steps)
    thing = reader.owned(fitting[0])[0]
    to = OnStep(track, place.step.whole)
    if isinstance(moment.trigger, Happening):
        if thing not in moment.trigger.to:
            raise Senseless(who, "`{said}` is not what was knocked.", "Name that.")
        return PutOnStep(thing, to, None)
    if moment.of_each not in known.homes:
        raise Senseless(who, "`{said}` could be any of them.", "Speak of a side that has it at home.")
    return PutOnStep(thing, to, OnStep(track, 0 if moment.of_each == known.homes[0] else known.steps))


def stepped(reader: Reader, consequence: then.Steps, moment: Moment) -> Shift:
    """Towards one home is away from the other."""
    homes = {
        track.homes
        for thing in things_of(moment, consequence)
        for track in reader.tracks
        if (start := track_start(reader, thing.kind)) and start.track == track.id
    }
    if len(homes) != 1:
        raise Senseless(consequence, "It stands on no track.", 'Put it on one: "… on step 3 of the … track".')
    toward = _home_meant(reader, consequence.towards, moment)
    first, last = next(iter(homes))
    if toward not in (first, last):
        raise Senseless(
            consequence.towards,
            "That track does not lead to {toward}.",
            "Name one of its two sides.",
            toward=toward.key,
        )
    near = consequence.direction == "towards"
    return Shift(consequence.by.whole * (1 if (toward == last) == near else -1))


def _home_meant(reader: Reader, phrase: Np, moment: Moment) -> SideId:
    meaning = reader.game.meaning(phrase.name)
    if isinstance(meaning, PlaceMeaning):
        own = evolve(moment.spoken, own=moment.spoken.parts.get(Whose.ACTOR))
        whose_home: set[Owner | None] = {spot.owner for spot in reader.spots("in", phrase, own, frozenset())}
    elif (named := side_named(meaning)) and phrase.determiner != "all":
        whose_home = {SideId(named)}
    else:
        whose_home = {each.side for each in movers(reader, phrase, moment)}
    if len(whose_home) != 1 or not isinstance(side := whose_home.pop(), SideId):
        raise Senseless(phrase, "`{said}` is nobody's home.", write("towards the thrower"))
    return side

"""What somebody carries and has no longer: it falls, goes back, or comes to lie somewhere."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.loads import Lies, SetDown
from grammar.core.reading.consequences.moved_things import sent_thing_or_ball
from grammar.core.reading.consequences.movers import movers
from grammar.core.reading.events.events import Moment
from grammar.core.reading.phrases.carrying import goes_down, with_load
from grammar.core.reading.phrases.going_back import is_ball_sent
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, the_one, whose
from grammar.core.rules import ON_A_PLAYER, Effect, Happening, Person, Result
from grammar.core.values import KindId, Population, SideId, Sort, Spot
from grammar.said import quoting
from grammar.sentences import resting, then
from grammar.sentences.ball import RestTo
from grammar.sentences.base import Node, Np


def gone_back(reader: Reader, consequence: then.GoesBack, moment: Moment) -> Iterator[Effect]:
    """ "The ball goes back": to whoever sent it. "The log goes back": to where it was taken from."""
    what, where = consequence.what, consequence.where
    sent = isinstance(moment.trigger, Happening) and moment.result is not Result.TOUCHED
    if sent and is_ball_sent(reader.game, what.name):
        back = resting.RestBack("goes back", where, span=consequence.span)
        yield from sent_thing_or_ball(reader, what, back, moment)
    elif where is not None:
        yield from sent_load(reader, what, RestTo(where), moment)
    else:
        yield SetDown(_carried(reader, what, moment), Lies.BACK)


def set_down(reader: Reader, consequence: then.Drops, moment: Moment) -> Iterator[SetDown]:
    """ "that player drops the log": it lies where they are."""
    for mover in movers(reader, consequence.who, moment):
        if mover.who is not Person.OBJECT:
            raise _of_nobody_who_carries(consequence.who)
        yield SetDown(_carried(reader, consequence.what, moment), Lies.THERE)


def sent_load(reader: Reader, what: Np, place: resting.RestingPlace, moment: Moment) -> Iterator[SetDown]:
    """ "the log goes to the tagger's base"."""
    if not isinstance(place, RestTo | resting.RestThere):
        raise Senseless(place, "What was carried goes to a place.", "Name a half, a base or another area.")
    preposition = place.preposition if isinstance(place, resting.RestThere) else None
    spots = reader.spots(preposition, place.where, moment.spoken, _own(moment))
    if len(spots) != 1:
        the_one(whose(reader.game, place.where, place=True), frozenset(_owners(spots)))
    yield SetDown(_carried(reader, what, moment), spots[0])


def _owners(spots: tuple[Spot, ...]) -> Iterator[SideId]:
    return (spot.owner for spot in spots if isinstance(spot.owner, SideId))


def _own(moment: Moment) -> frozenset[SideId]:
    """Without an owner the place of whoever carried it is meant."""
    return frozenset({moment.concerned}) if moment.concerned else frozenset()


def _carried(reader: Reader, what: Np, moment: Moment) -> frozenset[KindId]:
    """The kinds of loads of a phrase, where somebody who may carry one is spoken of."""
    trigger = moment.trigger
    if not isinstance(trigger, Happening) or trigger.result not in ON_A_PLAYER:
        raise _of_nobody_who_carries(what)
    balls = frozenset(reader.kinds_meant(what, Sort.BALL))
    if balls and balls <= reader.chased_for:  # their side has it, and who of them is not counted
        title = quoting("Where `{what}` goes is said of the ball itself.", what=what.words())
        raise Senseless(what, title, quoting("Write instead: {goes_down}", goes_down=goes_down(what)))
    with_load(reader, frozenset(each for each in trigger.to if isinstance(each, Population)), what)
    return frozenset(reader.kinds_meant(what, Sort.LOAD, Sort.BALL))


def _of_nobody_who_carries(place: Node) -> Senseless:
    title = "Nobody is spoken of who carries anything, so that nothing is dropped and nothing goes back."
    hint = (
        "Of a ball say where it goes, such as: the ball goes to the thrower's half. "
        "What players carry goes back, or falls, where one of them is touched or hit."
    )
    return Senseless(place, title, hint)

"""Rules only for who acts from a place or from afar, or for what has bounced: "a player is hit from the far zone"."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.reading.events.doers import done_by, event_of
from grammar.core.reading.events.events import Moment, moments
from grammar.core.reading.play.limits import nothing_bounces
from grammar.core.reading.sheet.naming import names_in
from grammar.core.reading.sheet.reader import Reader, metres
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose
from grammar.core.rules import Happening, Result
from grammar.core.values import At, Part, SideId
from grammar.frozen import evolve
from grammar.said import quoting
from grammar.sentences import attempting, events, then, when
from grammar.sentences.base import Np
from grammar.sentences.limits import BOUNCED, HitNotBounced, NotBounced

COUNTING = (Result.KNOCKED, Result.HIT, Result.THROUGH, Result.CAUGHT, Result.PASSED)
IN_PLAY = (Result.TOUCHED, Result.TAKEN, Result.ARRIVED)


def moments_of(reader: Reader, sentence: when.When) -> Iterator[Moment]:
    """All triggers of a line; where it says by whom, only what these do; from where, only what those do who wait there;
    or only what bounced."""
    doer = sentence.doer

    def of_whom(moment: Moment) -> Moment | None:
        return moment if doer is None else done_by(reader, doer, moment)

    for moment in moments(reader, event_of(reader, sentence), of_whom):
        if doer is not None and not isinstance(moment.trigger, Happening):
            done_by(reader, doer, moment)  # says that nobody does this
        there = moment
        if isinstance(sentence.whence, when.Afar):
            there = _from_afar(reader, moment, sentence.whence)
        elif sentence.whence is not None:
            there = _from(reader, moment, sentence.whence)
        yield there if sentence.bounced is None else _bounced(reader, there, sentence)


def _bounced(reader: Reader, moment: Moment, sentence: when.When) -> Moment:
    trigger = moment.trigger
    if not isinstance(trigger, Happening) or trigger.result not in COUNTING:
        title = quoting("`{said}`: of that it is not known whether a ball bounced.", said=sentence.event.words())
        raise Senseless(sentence, title, quoting("Leave out: {bounced}", bounced=sentence.bounced or ""))
    nothing_bounces(reader, sentence)
    if any(isinstance(each, then.PlaysOn) for each in sentence.consequences):
        hint = quoting("Write in play: {line}", line=_not_counted(sentence.event))
        raise Senseless(sentence, "What else follows from it would still do so.", hint)
    return evolve(moment, trigger=evolve(trigger, bounced=True, named=trigger.named + 1))


def _not_counted(event: events.Event) -> str:
    """The line that says of what so happens that it does not count after a bounce: of these alone where one can."""
    match event:
        case events.Hit():
            return HitNotBounced(event.who, BOUNCED).words()
        case events.Knocked():
            return HitNotBounced(event.what, BOUNCED).words()
        case events.GoesThrough():
            return HitNotBounced(event.through, BOUNCED).words()
        case _:
            return NotBounced(f"a catch {BOUNCED}").words()


def _from_afar(reader: Reader, moment: Moment, afar: when.Afar) -> Moment:
    """Of attempts of which a line says that they come from so far or farther."""
    trigger = moment.trigger
    if not isinstance(trigger, Happening) or trigger.result in IN_PLAY:
        title = quoting("`from {afar}`: of that no distance is known.", afar=afar.words())
        raise Senseless(afar, title, "Leave that out, or say it of a thing that falls or a player who is hit.")
    said = [each.told(attempting.FromWhere) for each in reader.game.all_of("play", attempting.Attempt)]
    known = [metres(each.distance) for each in said if isinstance(each, attempting.FromWhere)]
    known += [role.aims_from_m for role in reader.roles if role.aims_from_m is not None]
    if not any(each >= metres(afar.distance) for each in known):
        title = quoting("No line lets anybody try anything from {afar}.", afar=afar.words())
        hint = quoting("Add under play, such as: players roll a ball at the pins, from {afar}", afar=afar.words())
        raise Senseless(afar, title, hint)
    return evolve(moment, trigger=evolve(trigger, from_m=metres(afar.distance), named=trigger.named + 1))


def _from(reader: Reader, moment: Moment, whence: Np) -> Moment:
    trigger = moment.trigger
    if not isinstance(trigger, Happening) or trigger.result in IN_PLAY or moment.actor is None:
        title = quoting("Nobody does this from `{whence}`: who waits there only sends balls.", whence=whence.words())
        raise Senseless(whence, title, "Leave that out, or say it of a player who is hit or of a thing that falls.")
    spots = reader.spots(None, whence, _seen_by(reader, moment.actor), reader.all_sides, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        hint = "Leave that out, or name an area of the sheet in which players wait."
        raise Senseless(whence, "`{said}` is part of the floor on which all play.", hint)
    named = trigger.named + names_in(reader, whence)
    return evolve(moment, trigger=evolve(trigger, whence=frozenset(map(At, spots)), named=named))


def _seen_by(reader: Reader, side: SideId) -> Spoken:
    """Whose places are meant: of the other side is against whoever acts."""
    return Spoken(reader.side_ids, other=reader.others(side) or None, parts={Whose.ACTOR: frozenset({side})})

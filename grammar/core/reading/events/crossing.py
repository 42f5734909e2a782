"""Who waits in a place of a side: its own players, or those whom a rule sends over there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress

from grammar.core.play import Turn
from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Claimed, Senseless, Spoken, Whose, whose
from grammar.core.rules import Happening, Result
from grammar.core.values import SHARED, AreaId, Laden, Population, SideId, Spot
from grammar.meanings import PlaceMeaning
from grammar.said import listed, quoting, said
from grammar.sentences import queues, resting, then, when
from grammar.sentences.ball import RestTo
from grammar.sentences.base import Np


def sent_over(reader: Reader, effects: Iterable[when.Consequence]) -> Mapping[AreaId, frozenset[Whose]]:
    """For each area in which forms the rules say whose it is to which they send players."""
    found: dict[AreaId, frozenset[Whose]] = {}
    for where in (where for effect in effects for where in _places(reader, effect)):
        meaning = reader.game.meaning(where.name)
        if isinstance(meaning, PlaceMeaning) and not meaning.built_in:
            area = AreaId(meaning.place)
            with suppress(Senseless):  # told where the line itself is read
                found[area] = found.get(area, frozenset()) | {whose(reader.game, where, place=True).whose}
    return found


def _places(reader: Reader, effect: when.Consequence) -> Iterator[Np]:
    match effect:
        case then.Waits():
            yield effect.where
        case then.Joins(what=Np() as what):
            yield what
        case then.MovesTo(place=RestTo() | resting.RestThere() as place):
            if not (isinstance(effect.who, Np) and reader.is_kit(effect.who)):
                yield place.where


def waiting_there(reader: Reader, spot: Spot) -> frozenset[SideId]:
    """The sides whose players wait in a place of a side."""
    assert isinstance(spot.owner, SideId) and isinstance(spot.of, AreaId)
    began = {start.what.side for start in reader.starts if isinstance(start.what, Population) and start.at == spot}
    forms = reader.sent_over.get(spot.of, frozenset())
    found = frozenset(began) | _sent_there(reader, spot.owner, forms)
    return found or frozenset({spot.owner})


def _sent_there(reader: Reader, owner: SideId, forms: frozenset[Whose]) -> frozenset[SideId]:
    """The sides whose players rules send to a place of an owner."""
    if forms <= {Whose.UNSAID, Whose.OWN}:
        return frozenset({owner}) if forms else frozenset()
    return reader.others(owner) if forms == {Whose.OTHER} else reader.all_sides


def how_many_wait(who: queues.Queued | queues.AllQueued, players: frozenset[Population]) -> int:
    """ "The first 3": of players who are alike, so that it is all one who of them is which."""
    if not isinstance(who, queues.Queued) or who.number is None:
        return 1
    number = who.number
    if number.value != number.whole or number.whole < 1:
        raise Senseless(number, "`{said}` of them cannot come.", "Write a whole number from 1.")
    alike = {each for each in players if not isinstance(each.role, Laden)}
    if number.whole > 1 and len(alike) > 1:
        come = "players of several sides" if len({each.side for each in alike}) > 1 else "players with several tasks"
        title = quoting(
            "`{said}`: {come} wait there, and it is not known which of them come.", said=who.words(), come=said(come)
        )
        raise Senseless(number, title, "Say: the first in …, or all in …, or send only players of one side there.")
    return number.whole


def who_wait(
    reader: Reader, spot: Spot, said: Claimed, spoken: Spoken, own: SideId | None, turn: Turn
) -> frozenset[SideId]:
    """The sides whose players are meant: whoever waits there, unless the queue is shared and one side is named."""
    if own is not None and (spot.owner is not SHARED or turn is Turn.ALL):
        return frozenset({own})
    if isinstance(spot.owner, SideId):
        return waiting_there(reader, spot)
    return spoken.meant(said, reader.all_sides)


def never_there(
    reader: Reader,
    who: queues.Queued | queues.AllQueued,
    spot: Spot,
    said: Claimed,
    spoken: Spoken,
    own: SideId | None,
) -> None:
    """Raises Senseless where only players of the others come to the bench that is meant."""
    its = spot.owner if said.whose is Whose.OWN else own
    if its is None or not isinstance(spot.owner, SideId) or its in waiting_there(reader, spot):
        return
    name = who.where.name.text
    if spot.owner != own and own is not None and said.whose is not Whose.OWN:
        there = f"the {name}"
    else:
        against = "the thrower's side" if spoken.other == frozenset({own or spot.owner}) else "the other side"
        there = f"the {name} of {against}"
    title = "`{said}`: only players of the other side wait there."
    hint = quoting("Say of its own players: {who}", who=who.words().replace(who.where.words(), there))
    raise Senseless(who.where, title, hint)


def other_of_several(reader: Reader, at: frozenset[Spot], said: Claimed) -> None:
    """Raises Senseless where players of several sides wait at a side's own place, and go to "the other side"."""
    if said.whose is Whose.OTHER and len(reader.sides) > 1 and any(isinstance(each.owner, SideId) for each in at):
        sides = listed([each.key for each in reader.side_ids], "or")
        title = "`{said}`: players of several sides may wait there, and each has another."
        raise Senseless(said.node, title, quoting("Name the side: {sides}.", sides=sides))


def not_where_passes_go(reader: Reader, where: Np, own: Spot, moment: Moment) -> None:
    """Raises Senseless where a pass arrives at a bench of others, and the line would send somebody to their own."""
    trigger = moment.trigger
    if not isinstance(trigger, Happening) or trigger.result is not Result.PASSED:
        return
    reached = {at.spot for side, at in reader.passed_to if side == moment.actor and at in trigger.at}
    if own not in reached and any(spot.of == own.of for spot in reached):
        title = "`{said}` is that of whoever is sent there, and no pass goes to that one."
        raise Senseless(
            where,
            title,
            quoting("Say: {of_the_other}, or: their {name}", of_the_other=_of_the_other(where), name=where.name.text),
        )


def _of_the_other(where: Np) -> str:
    return f"the {where.name.text} of the other side"

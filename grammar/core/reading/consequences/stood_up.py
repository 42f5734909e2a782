"""Consequences for all targets of a side at once → effects."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.reading.phrases.tracks import track_start
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Happening, Result
from grammar.core.sets import StandAgain
from grammar.core.values import Sort
from grammar.said import write
from grammar.sentences import sets
from grammar.sentences.determiners import ALL, ONE


def stood_up(reader: Reader, said: sets.StandAgain, moment: Moment) -> StandAgain:
    """Which targets stand up again: those of the side spoken of, or of every side. Raises Senseless."""
    what, side = said.what, moment.of_each or moment.concerned
    spoken = moment.spoken.of_that_side()
    each = frozenset({moment.of_each}) if moment.of_each else reader.all_sides
    unsaid = reader.all_sides if what.determiner in ALL else each
    things = frozenset(reader.thing_phrase(what, spoken, unsaid, Sort.TARGET))
    if any(track_start(reader, thing.kind) for thing in things):
        raise Senseless(what, "What stands on a track does not fall.", "Say to which step it goes.")
    trigger = moment.trigger
    if isinstance(trigger, Happening) and trigger.result is Result.KNOCKED and things & trigger.to:
        title = "Of those of which one is just knocked, one says what follows when all are down."
        hint = write(f"a side has no {what.name.text} standing: all its {what.name.text} stand up again")
        raise Senseless(said, title, hint if side is None or len(reader.sides) > 1 else write("it stands up again"))
    every = what.determiner not in ONE
    if not every and len(things) > 1:
        raise Senseless(what, "`{said}`: which of them?", "Say of which side, or all of them.")
    return StandAgain(things, every, moment.of_each is not None and len({thing.owner for thing in things}) > 1)

"""How much an event names: what names more is the narrower event."""

from __future__ import annotations

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Whose, whose
from grammar.meanings import FrozenMeaning, KitMeaning, NothingMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import events
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import Np
from grammar.sentences.blocking import Blocked


def named_in(reader: Reader, event: events.Event) -> int:
    """How much an event names: a kind, a role, an owner, a skill, a place."""
    match event:
        case events.Knocked():
            phrases: tuple[Np | None, ...] = (event.what,)
        case events.HitHigh():
            phrases = (event.who,)
        case events.Hit() | events.Touched():
            phrases = (event.who, event.load)
        case events.Arrives():
            phrases = (event.who,)
        case events.GoesThrough():
            phrases = (event.what, event.through)
        case events.Crosses():
            phrases = (event.what, event.line)
        case events.Caught():
            phrases = (event.what, event.where)
        case events.Missed() | events.Leaves() | Blocked():
            phrases = (event.what,)
        case Intercepted():
            return 1 + isinstance(reader.game.meaning(event.what.name), KitMeaning)  # it says that it is a pass
        case _:
            phrases = ()
    return sum(names_in(reader, phrase) for phrase in phrases if phrase is not None)


def names_in(reader: Reader, phrase: Np) -> int:
    """How much a phrase names."""
    meaning = reader.game.meaning(phrase.name)
    particular = isinstance(meaning, KitMeaning | NothingMeaning) or bool(reader.shot(phrase))
    if isinstance(meaning, PlayerMeaning):
        particular = meaning.role is not None
    if isinstance(meaning, FrozenMeaning):
        return 1  # a place of its own
    owned = whose(reader.game, phrase).whose is not Whose.UNSAID or getattr(meaning, "side", None) is not None
    return int(particular) + int(owned) + int(isinstance(meaning, PlaceMeaning))

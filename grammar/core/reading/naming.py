"""How much an event names: what names more is the narrower event."""

from __future__ import annotations

from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Whose, whose
from grammar.meanings import KitMeaning, PlaceMeaning, PlayerMeaning
from grammar.sentences import when
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import Np
from grammar.sentences.blocking import Blocked


def named_in(reader: Reader, event: when.Event) -> int:
    """How much an event names: a kind, a role, an owner, a skill, a place."""
    match event:
        case when.Knocked():
            phrases: tuple[Np | None, ...] = (event.what,)
        case when.HitHigh():
            phrases = (event.who,)
        case when.Hit() | when.Touched():
            phrases = (event.who, event.load)
        case when.Arrives():
            phrases = (event.who,)
        case when.GoesThrough():
            phrases = (event.what, event.through)
        case when.Crosses():
            phrases = (event.what, event.line)
        case when.Caught():
            phrases = (event.what, event.where)
        case when.Missed() | when.Leaves() | Blocked():
            phrases = (event.what,)
        case Intercepted():
            return 1 + isinstance(reader.game.meaning(event.what.name), KitMeaning)  # it says that it is a pass
        case _:
            phrases = ()
    return sum(names_in(reader, phrase) for phrase in phrases if phrase is not None)


def names_in(reader: Reader, phrase: Np) -> int:
    """How much a phrase names."""
    meaning = reader.game.meaning(phrase.name)
    particular = isinstance(meaning, KitMeaning) or bool(reader.shot(phrase))
    if isinstance(meaning, PlayerMeaning):
        particular = meaning.role is not None
    owned = whose(reader.game, phrase).whose is not Whose.UNSAID or getattr(meaning, "side", None) is not None
    return int(particular) + int(owned) + int(isinstance(meaning, PlaceMeaning))

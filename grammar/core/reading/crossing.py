"""Who waits in a place of a side: its own players, or those whom a rule sends over there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress

from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless, Whose, whose
from grammar.core.values import AreaId, Population, SideId, Spot
from grammar.meanings import PlaceMeaning
from grammar.sentences import resting, then, when
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
    if any(_is_stranger(start.what, spot) and start.at == spot for start in reader.starts):
        return reader.all_sides
    forms = reader.sent_over.get(spot.of, frozenset())
    if forms <= {Whose.UNSAID, Whose.OWN}:
        return frozenset({spot.owner})
    return reader.others(spot.owner) if forms == {Whose.OTHER} else reader.all_sides


def _is_stranger(what: object, spot: Spot) -> bool:
    return isinstance(what, Population) and what.side != spot.owner

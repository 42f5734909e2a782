"""Who may run into an area of the sheet while they play, so that they are there without being sent."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.sentences import sides, then, when
from grammar.sentences.base import Np
from tests.interpreter.board import Pupil, Spot
from tests.interpreter.names import Folk, Somewhere
from tests.interpreter.remembered import remembered
from tests.interpreter.room import barred
from tests.interpreter.sheet import Sheet
from tests.interpreter.spots import closest_stays, place_of, spot

FLOOR = ("strip", "zone", "base", "circle")


def runs_there(sheet: Sheet, where: Spot, pupil: Pupil) -> bool:
    """Whether a pupil in play may be in an area that is floor, to which nobody is sent to wait."""
    place = sheet.places.get(where.place)
    if place is None or place.kind not in FLOOR or place.shut or where.place in _sent_to(sheet):
        return False
    if barred(sheet, where, pupil):
        return False
    stays = [spot(sheet, line.preposition, line.where, pupil.side) for line in closest_stays(sheet, pupil)]
    return not stays or any(each == where or _in_half(sheet, each, where) for each in stays)


def _in_half(sheet: Sheet, home: Spot, where: Spot) -> bool:
    """Whether a home is the half in which an area of a side lies, or both."""
    return home.place == "court" or (home.place == "half" and where.owner in (None, home.owner))


@remembered
def _sent_to(sheet: Sheet) -> frozenset[str]:
    """The places to which a line sends players, or where they wait at the start."""
    placings = (each for each in sheet.said(sides.Placing) if isinstance(sheet.meaning(each.what.name), Folk))
    found = {place_of(sheet, each.where) for each in placings}
    for rule in sheet.said(when.When):
        named = (where for each in rule.consequences for where in _places(sheet, each))
        found |= {place_of(sheet, where) for where in named if isinstance(sheet.meaning(where.name), Somewhere)}
    return frozenset(found)


def _places(sheet: Sheet, done: object) -> Iterator[Np]:
    if isinstance(done, then.Waits):
        yield done.where
    elif isinstance(done, then.MovesTo):
        where = getattr(done.place, "where", None)
        ball = isinstance(done.who, Np) and bool(sheet.stuff(done.who).kinds)
        if isinstance(where, Np) and not ball:
            yield where

"""Where a phrase of place means: the spots of the court and of its areas, and what a pupil has at hand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from grammar.sentences import play
from grammar.sentences.base import Np
from tests.interpreter.board import AT, Pupil, Spot
from tests.interpreter.names import SHARED_PLACES, Somewhere
from tests.interpreter.remembered import remembered
from tests.interpreter.room import shut_to
from tests.interpreter.sheet import Sheet
from tests.interpreter.whose import EVERY, OTHERS, OWN, UNSAID, Of, whose

PARTS = {"behind": "behind", "before": "before", "beside": "beside"}


def place_of(sheet: Sheet, phrase: Np) -> str:
    """The place that a phrase names."""
    meant = sheet.meaning(phrase.name)
    assert isinstance(meant, Somewhere), phrase.name.text
    return meant.place


def spot(sheet: Sheet, preposition: str | None, phrase: Np, side: str | None) -> Spot:
    """The spot that a phrase means if it is this side's; a place that only one has, or all share, is that one."""
    place = place_of(sheet, phrase)
    if place == "half" and not sheet.halved:
        return Spot("court", AT, None)
    owners = sheet.owners_of(place)
    owner = side if side in owners else owners[0]
    part = PARTS.get(preposition or "", AT) if place not in sheet.places and place not in ("half", "court") else AT
    return Spot(place, part, owner)


def spots_of(sheet: Sheet, preposition: str | None, phrase: Np, sides: Iterable[str]) -> tuple[Spot, ...]:
    """The spots that a phrase means for some sides, each once."""
    return tuple(dict.fromkeys(spot(sheet, preposition, phrase, side) for side in sides))


def stands(sheet: Sheet, phrase: Np, side: str) -> tuple[Spot, ...]:
    """Where those of a side wait of whom a phrase speaks: any place of that name where it does not say whose."""
    said = whose(sheet, phrase)
    if isinstance(said, Of):
        owners: tuple[str, ...] = (said.side,)
    elif said in (OTHERS, OWN):
        owners = sheet.others(side) if said == OTHERS else (side,)
    else:
        owners = sheet.sides
    return spots_of(sheet, None, phrase, owners)


def half(sheet: Sheet, side: str | None) -> Spot:
    """The half of a side; on an undivided court its hands where the ball is somebody's, else the whole court."""
    if sheet.held:
        return Spot("hands", AT, side)
    return Spot("half", AT, side) if sheet.halved else Spot("court", AT, None)


@remembered
def at_hand(sheet: Sheet, side: str, role: str) -> tuple[Spot, ...]:
    """Where the balls lie that a player can take up: in the half where they stay, or anywhere on the court; and in the
    area where they stay."""
    theirs = (*_stayed_in(sheet, side, role), *((of_task(sheet, side, role),) if role else ()))
    if not sheet.halved:
        return (half(sheet, side), *theirs)
    stays = [line for line in sheet.said(play.Stay) if _stays(sheet, line, side, role)]
    closest = [line for line in stays if line.who.name.text not in ("player", "players")] or stays
    found = dict.fromkeys(each for line in closest for each in _halves(sheet, line, side))
    return (*(tuple(found) or (half(sheet, side),)), *theirs)


def _stayed_in(sheet: Sheet, side: str, role: str) -> Iterator[Spot]:
    """The areas in which a player stays and that somebody enters."""
    stays = [line for line in sheet.said(play.Stay) if _stays(sheet, line, side, role)]
    closest = [line for line in stays if line.who.name.text not in ("player", "players")] or stays
    for line in closest:
        area = sheet.places.get(place_of(sheet, line.where))
        if area is not None and not area.shut:
            said = whose(sheet, line.where)
            owners = sheet.sides if said == EVERY else sheet.others(side) if said == OTHERS else (side,)
            yield from spots_of(sheet, None, line.where, (said.side,) if isinstance(said, Of) else owners)


def of_task(sheet: Sheet, side: str | None, role: str) -> Spot:
    """Where those of a side with a task have a ball that is theirs alone."""
    return half(sheet, side)._replace(part=f"of {role}")


def always_safe(sheet: Sheet, one: Pupil, by: Pupil, what: str) -> bool:
    """Whether a pupil stays in an area in which nobody is touched (or hit), or either of two where the other, who
    touches, does not go."""
    safe = {name for name, place in sheet.places.items() if what in place.safe}
    if what == "hit":
        return _only_in(sheet, one, safe)
    safe |= {name for name in sheet.places if shut_to(sheet, name, one.side, by)}
    kept = {name for name in sheet.places if shut_to(sheet, name, by.side, one)}
    return _only_in(sheet, one, safe) or _only_in(sheet, by, kept)


def closest_stays(sheet: Sheet, pupil: Pupil) -> list[play.Stay]:
    """The lines that say where a pupil stays: those of their task, else those of all players."""
    stays = [line for line in sheet.said(play.Stay) if _stays(sheet, line, pupil.side, pupil.role)]
    return [line for line in stays if line.who.name.text not in ("player", "players")] or stays


def _only_in(sheet: Sheet, pupil: Pupil, places: set[str]) -> bool:
    """Whether a pupil stays in these areas and nowhere else."""
    closest = closest_stays(sheet, pupil)
    return bool(closest) and all(place_of(sheet, line.where) in places for line in closest)


def _stays(sheet: Sheet, line: play.Stay, side: str, role: str) -> bool:
    who = sheet.folk(line.who)
    if who is None or who.side not in (None, side) or who.role not in (None, role):
        return False
    said = whose(sheet, line.who)
    return side == said.side if isinstance(said, Of) else True


def _halves(sheet: Sheet, line: play.Stay, side: str) -> Iterator[Spot]:
    place, said = place_of(sheet, line.where), whose(sheet, line.where)
    if place == "court":
        yield Spot("court", AT, None)
        yield from (half(sheet, each) for each in sheet.sides)
    elif isinstance(said, Of):
        yield half(sheet, said.side)
    elif said == OTHERS:
        yield from (half(sheet, each) for each in sheet.others(side))
    elif said == EVERY and place not in SHARED_PLACES:
        yield from (half(sheet, each) for each in sheet.sides)
    else:
        assert said in (OWN, UNSAID, EVERY), said
        yield half(sheet, side)

"""How much room there is where the rules send players: "at most 2 players there"."""

from __future__ import annotations

from grammar.meanings import PlayerMeaning
from grammar.sentences.space import Area, AtMostThere
from tests.interpreter.board import Counts, player, total
from tests.interpreter.sheet import Sheet


def how_many_may_go(sheet: Sheet, side: str, role: str | None, where: str, counts: Counts) -> int | None:
    """How many more of a side and role find room in a place; None where as many as like may be there."""
    free = [
        max(0, rule.most.whole - _there(sheet, area, rule, side, counts))
        for area in sheet.areas()
        for rule in area.rules
        if area.name.text == where and isinstance(rule, AtMostThere) and _fits(_meant(sheet, rule), side, role)
    ]
    return min(free, default=None)


def _there(sheet: Sheet, area: Area, rule: AtMostThere, side: str, counts: Counts) -> int:
    """Who takes up that room now: of this side where every side has a place of its own, else of all."""
    own_place = area.spot.determiner in ("each", "every")
    sides = (side,) if own_place else sheet.sides
    who = _meant(sheet, rule)
    names = [
        player(each, role, area.name.text) for each in sides for role in sheet.roles(each) if _fits(who, each, role)
    ]
    return total(counts, names)


def _meant(sheet: Sheet, rule: AtMostThere) -> PlayerMeaning:
    who = sheet.players_meant(rule.who)
    assert who is not None
    return who


def _fits(who: PlayerMeaning, side: str, role: str | None) -> bool:
    return who.side in (None, side) and who.role in (None, role)

"""What an area is: its last word says so, or, where it says nothing, where it lies."""

from __future__ import annotations

from grammar.meanings import AREA_KINDS
from grammar.mistakes.near_names import near_names
from grammar.sentences.space import Area
from grammar.words import singulars

_COMPACT_SPOTS = ("corner", "middle")
_SHORTEST = 3  # an ark is no mark
_CALLED_SO = {  # what teachers call such places (from memory)
    **dict.fromkeys(("mat", "island", "nest", "den", "home", "camp", "castle", "house", "hoop", "bank"), ("base",)),
    **dict.fromkeys(("jail", "prison", "sickbay", "hospital"), ("bench", "queue")),
    **dict.fromkeys(("seat", "seats", "substitutes"), ("bench",)),
    **dict.fromkeys(("line", "row"), ("queue", "strip")),
}


def kind_of(area: Area) -> str | None:
    """What an area is, where that can be told: a goal area 3 m deep is a zone; a jail may be a bench or a queue."""
    last = area.name.text.split()[-1]
    if last in AREA_KINDS:
        return last
    kinds = likely_kinds(area)
    a_slip = len(last) > _SHORTEST and near_names(last, AREA_KINDS, 1)
    return kinds[0] if len(kinds) == 1 and not a_slip else None


def likely_kinds(area: Area) -> tuple[str, ...]:
    """What an area may be, the likeliest first, by its name and by where it lies."""
    spread = bool(area.places) or (area.spot.name.text in _COMPACT_SPOTS and area.preposition != "across")
    by_place = ("base",) if spread else ("zone",) if area.depth else ("bench", "base")
    return _CALLED_SO.get(one_of_name(area.name.text).split()[-1], by_place)


def one_of_name(name: str) -> str:
    """The singular of a name, or the name."""
    return next(iter(singulars(name)), name)

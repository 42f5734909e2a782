"""What to mind of a game: its own words, then what the kit says of the things that it is played with or on."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from grammar.core.area_kind import AreaKind
from grammar.core.game import Core
from grammar.core.skills import FLYING, WITH_A_BALL
from grammar.frozen import evolve, frozen
from library import KitItem

_ON_THE_FLOOR = re.compile(
    r"\bballs? (?:must |may only |always )?(?:stay|roll|remain|travel|go|are kept)s? (?:\w+ ){0,2}(?:on|along) the "
    r"(?:floor|ground)\b",
    re.I,
)


@frozen
class Caution:
    """A text of an author or of the kit; `things` are those it is of, as the sheet or the kit calls several of them,
    none where the author speaks for the whole game. `overtaken` are the clauses, by their number, that say that balls
    stay on the floor where all of them fly now."""

    text: str
    things: tuple[str, ...] = ()
    overtaken: tuple[int, ...] = ()


def clauses(text: str) -> list[str]:
    """What a text says one after the other, between semicolons."""
    return re.split(r"\s*;\s*", text)


def cautions_of(core: Core, stand_ins: Iterable[str], kit: Mapping[str, KitItem]) -> tuple[Caution, ...]:
    """Of the game and its modifiers, of what stands in for things that are not there, of what the sheet lists, and of
    benches. What is said of several things is said once."""
    own = dict.fromkeys((*core.told.care, *core.told.cautions))
    things = _things(core, stand_ins, kit)
    fly = _all_fly(core)
    said = (Caution(text, overtaken=_of_the_floor(text) if fly else ()) for text in own)
    return (*said, *together(Caution(item.caution, (called,)) for called, item in things if item.caution))


def together(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """Each text once, with all things of which it is said."""
    found: dict[str, Caution] = {}
    for each in cautions:
        before = found.get(each.text, each)
        things = tuple(dict.fromkeys((*before.things, *each.things)))
        found[each.text] = evolve(before if each.overtaken else each, things=things)
    return tuple(found.values())


def _of_the_floor(text: str) -> tuple[int, ...]:
    return tuple(number for number, clause in enumerate(clauses(text)) if _ON_THE_FLOOR.search(clause))


def _all_fly(core: Core) -> bool:
    """Whether there are balls that are sent, and none of them along the floor."""
    flights = {each.skill in FLYING for each in core.play.attempts if each.skill in WITH_A_BALL}
    return flights == {True}


def _things(core: Core, stand_ins: Iterable[str], kit: Mapping[str, KitItem]) -> Iterator[tuple[str, KitItem]]:
    plurals = dict(core.plurals)
    yield from ((kit[name].plural, kit[name]) for name in stand_ins if name in kit)
    for kind in core.play.kinds:
        if kind.like.key in kit:
            yield plurals.get(kind.id, kind.id.key), kit[kind.like.key]
    if "bench" in kit and any(area.kind is AreaKind.BENCH for area in core.play.areas):
        yield kit["bench"].plural, kit["bench"]

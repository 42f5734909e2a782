"""What to mind of a game: its own words, then what the kit says of the things that it is played with or on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from grammar.core.declared import AreaKind
from grammar.core.game import Core
from grammar.frozen import frozen
from library import KitItem


@frozen
class Caution:
    """A text of an author or of the kit; `things` are those it is of, as the sheet or the kit calls several of them,
    none where the author speaks for the whole game."""

    text: str
    things: tuple[str, ...] = ()


def cautions_of(core: Core, stand_ins: Iterable[str], kit: Mapping[str, KitItem]) -> tuple[Caution, ...]:
    """Of the game and its modifiers, of what stands in for things that are not there, of what the sheet lists, and of
    benches. What is said of several things is said once."""
    own = dict.fromkeys((*core.told.care, *core.told.cautions))
    things = _things(core, stand_ins, kit)
    return (*map(Caution, own), *together(Caution(item.caution, (called,)) for called, item in things if item.caution))


def together(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """Each text once, with all things of which it is said."""
    found: dict[str, dict[str, None]] = {}
    for each in cautions:
        found.setdefault(each.text, {}).update(dict.fromkeys(each.things))
    return tuple(Caution(text, tuple(things)) for text, things in found.items())


def _things(core: Core, stand_ins: Iterable[str], kit: Mapping[str, KitItem]) -> Iterator[tuple[str, KitItem]]:
    plurals = dict(core.plurals)
    yield from ((kit[name].plural, kit[name]) for name in stand_ins if name in kit)
    for kind in core.play.kinds:
        if kind.like.key in kit:
            yield plurals.get(kind.id, kind.id.key), kit[kind.like.key]
    if "bench" in kit and any(area.kind is AreaKind.BENCH for area in core.play.areas):
        yield kit["bench"].plural, kit["bench"]

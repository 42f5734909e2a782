"""What the authors of a game and of its modifiers wrote, and whether all of it can be said in another language."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.telling.wording import Wording
from grammar.core.game import Core
from library.records import KitItem

AS_WRITTEN = "Words of the authors that nobody has translated stand as they were written."


def as_written(
    core: Core, more: Iterator[str] | tuple[str, ...], catalogue: Mapping[str, KitItem], wording: Wording
) -> str:
    """The line that says so, where a name or a text of the authors stays as it is; else nothing."""
    written = (*names_of(core), *texts_of(core), *_of_kit(core, catalogue), *more)
    return "" if all(wording.knows(each) for each in written if each) else wording.say(AS_WRITTEN)


def names_of(core: Core) -> Iterator[str]:
    """Every name that the sheet gives: of things, areas, tracks, sides and roles."""
    play, called = core.play, dict(core.called)
    for kind in play.kinds:
        yield from (kind.id.key, kind.like.key)
    yield from dict.fromkeys(area.id.key for area in play.areas)
    yield from (track.id.key for track in play.tracks)
    yield from (called.get(side, side.key) for side in play.side_ids)
    yield from dict.fromkeys(role.id.key for role in play.roles)


def texts_of(core: Core) -> Iterator[str]:
    """Every text that the sheet quotes, and its switches; the title is a name of its own and stays."""
    told = core.told
    yield from (*told.about, *told.cues, *told.cautions, *told.care, *told.credit, *told.outcomes)
    yield from (choice.id.key for choice in core.play.choices)
    yield from (text for _line, text in told.quotes)


def _of_kit(core: Core, catalogue: Mapping[str, KitItem]) -> Iterator[str]:
    likes = (kind.like.key for kind in core.play.kinds)
    yield from (catalogue[like].caution for like in likes if like in catalogue)

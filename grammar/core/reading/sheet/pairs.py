"""Between whom an event can happen, and who of them has caught or kept."""

from __future__ import annotations

from collections.abc import Mapping

from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Whose
from grammar.core.rules import Result
from grammar.core.values import SHARED, Owner, SideId, Skill
from grammar.sentences import events
from grammar.sentences.ball import Intercepted

# Only what is aimed at has a keeper.
KEPT = frozenset({Result.KNOCKED, Result.HIT, Result.TOUCHED, Result.HIGH, Result.THROUGH, Result.BLOCKED})


def pairs_of_event(reader: Reader, event: events.Event) -> tuple[tuple[SideId, Owner], ...]:
    """Who acts and who is concerned: with a pass that arrives nobody else; a catch is made by any other side."""
    if among_mates(reader, event):
        return tuple((side, side) for side in reader.side_ids)
    if isinstance(event, events.Caught | Intercepted) and len(reader.sides) > 1:
        others = ((side, other) for side in reader.side_ids for other in reader.side_ids if other != side)
        return (*others, *(pair for pair in reader.pairs if pair[1] is SHARED))
    return reader.pairs


def among_mates(reader: Reader, event: events.Event) -> bool:
    """Whether an event concerns nobody but the side that acts: a pass that is caught, somebody who arrives."""
    if isinstance(event, events.Caught):
        return event.where is not None or reader.shot(event.what) == (Skill.PASS,)
    return isinstance(event, events.Arrives)


def parts_of(
    results: frozenset[Result], side: SideId, other: frozenset[SideId] | None
) -> Mapping[Whose, frozenset[SideId]]:
    """The sides of the thrower, and of the catcher or the keeper where a ball of these results has one."""
    parts = {Whose.ACTOR: frozenset({side})}
    catching = frozenset({side}) if results == {Result.PASSED} else other if results == {Result.CAUGHT} else None
    if catching:
        parts[Whose.CATCHER] = catching
    if other and results & KEPT and results <= KEPT | {Result.CROSSED, Result.ARRIVED}:
        parts[Whose.KEEPER] = other
    return parts

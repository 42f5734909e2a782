"""Between whom an event can happen."""

from __future__ import annotations

from grammar.core.reading.reader import Reader
from grammar.core.values import SHARED, Owner, SideId, Skill
from grammar.sentences import when
from grammar.sentences.ball import Intercepted


def pairs_of_event(reader: Reader, event: when.Event) -> tuple[tuple[SideId, Owner], ...]:
    """Who acts and who is concerned: with a pass that arrives nobody else; a catch is made by any other side."""
    if among_mates(reader, event):
        return tuple((side, side) for side in reader.side_ids)
    if isinstance(event, when.Caught | Intercepted) and len(reader.sides) > 1:
        others = ((side, other) for side in reader.side_ids for other in reader.side_ids if other != side)
        return (*others, *(pair for pair in reader.pairs if pair[1] is SHARED))
    return reader.pairs


def among_mates(reader: Reader, event: when.Event) -> bool:
    """Whether an event concerns nobody but the side that acts: a pass that is caught, somebody who arrives."""
    if isinstance(event, when.Caught):
        return event.where is not None or reader.shot(event.what) == (Skill.PASS,)
    return isinstance(event, when.Arrives)

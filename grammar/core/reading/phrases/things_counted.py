"""Things of a side that are counted: how they stand, where they stand or were brought."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.core.guards import ThingsAt
from grammar.core.reading.phrases.tracks import counted_on_track, track_start
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, none_of
from grammar.core.values import SHARED, At, KindId, Owner, Posture, SideId, Sort, Thing
from grammar.sentences import claims


def things_counted(reader: Reader, counted: claims.Counted, side: SideId, spoken: Spoken) -> ThingsAt:
    """Things of a side that stand, are down, or stand somewhere. Raises Senseless."""
    kinds = reader.kinds_meant(counted.what, *Sort)
    on_track = [kind for kind in kinds if track_start(reader, kind)]
    if on_track:
        return counted_on_track(reader, counted, on_track, side)
    targets = [kind for kind in kinds if reader.sort(kind) is Sort.TARGET]
    owners: set[Owner] = {side, SHARED}
    found = reader.things(targets, owners)
    things = frozenset(each for each in found if each.owner == side or each.kind not in reader.changing_owners)
    if not things:
        raise none_of(counted.what, counted.what.text, side, "Name targets of the kit.")
    match counted.state:
        case None | claims.Standing():
            return ThingsAt(things, frozenset({Posture.UP}))
        case claims.Down():
            return ThingsAt(things, frozenset({Posture.DOWN}))
        case claims.Placed():
            return _placed(reader, counted.state, kinds, things, side, spoken)
    said = counted.state.words()
    raise Senseless(
        counted, "The {what} are never {said}.", "Write standing or down.", what=counted.what.text, said=said
    )


def _placed(
    reader: Reader,
    placed: claims.Placed,
    kinds: Iterable[KindId],
    things: frozenset[Thing],
    side: SideId,
    spoken: Spoken,
) -> ThingsAt:
    """Those that stand there by the set-up, and those that were brought there, whoever's they are."""
    spots = frozenset(reader.spots(placed.preposition, placed.where, spoken, frozenset({side})))
    carried = frozenset(thing for kind in kinds for thing in reader.owned(kind) if kind in reader.carried)
    if carried:
        return ThingsAt(carried, frozenset(At(spot) for spot in spots))
    there = frozenset(thing for thing in things if reader.stands_at(thing, spots))
    if not there:
        raise Senseless(placed, "None of them ever stands {said}.", "Name the place of the set-up.")
    return ThingsAt(there, frozenset({Posture.UP}))

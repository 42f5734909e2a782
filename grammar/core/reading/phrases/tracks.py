"""Where things on a track start, and what is at home on it."""

from __future__ import annotations

from grammar.core.guards import ThingsAt
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.values import At, KindId, OnStep, Posture, SideId, Thing
from grammar.said import listed, quoting, write
from grammar.sentences import claims


def track_start(reader: Reader, kind: KindId) -> OnStep | None:
    """The step on which the set-up puts things of a kind, or None."""
    return next((s.at for s in reader.starts if isinstance(s.at, OnStep) and _kind(s.what) == kind), None)


def _kind(what: object) -> KindId | None:
    return what.kind if isinstance(what, Thing) else None


def counted_on_track(reader: Reader, counted: claims.Counted, kinds: list[KindId], side: SideId) -> ThingsAt:
    """Those of these things that are at home with a side."""
    if not isinstance(counted.state, claims.AtHome):
        raise Senseless(
            counted,
            "The {what} move along a track; at its end they are at home.",
            write("at home"),
            what=counted.what.text,
        )
    standings: set[Posture | OnStep | At] = set()
    things: set[Thing] = set()
    for kind in kinds:
        start = track_start(reader, kind)
        assert start is not None
        track = next((each for each in reader.tracks if each.id == start.track), None)
        if track is None:  # its own line means nothing
            raise Senseless(
                counted, "The track of the {what} has no two ends.", "Mend its line.", what=counted.what.text
            )
        if side not in track.homes:
            names = listed([home.key for home in track.homes])
            raise Senseless(
                counted,
                "That track does not lead to {side}.",
                quoting("Its homes are those of {names}.", names=names),
                side=side.key,
            )
        standings.add(OnStep(track.id, 0 if side == track.homes[0] else track.steps))
        things |= set(reader.owned(kind))
    return ThingsAt(frozenset(things), frozenset(standings))

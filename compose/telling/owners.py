"""Whose it is what a condition counts: the side that has it, or nobody's."""

from __future__ import annotations

from typing import assert_never

from compose.telling.voice import Voice
from grammar.core.guards import BallsAt, Clock, Count, LivesOf, PlayersAt, Points, Row, Taken, ThingsAt, TimesRun
from grammar.core.values import SHARED, OnStep, Owner, SideId


def owner_of(voice: Voice, count: Count) -> Owner:
    """The side that has what is counted; SHARED where it is nobody's."""
    match count:
        case Clock() | Taken() | Row():
            return SHARED
        case Points() | LivesOf() | TimesRun():
            return count.side
        case PlayersAt():
            owners: set[Owner] = {who.side for who in count.of}
        case ThingsAt():
            owners = {home for at in count.at if (home := home_of(voice, at)) is not None}
            owners = owners or {thing.owner for thing in count.of} - {SHARED}
        case BallsAt():
            owners = {spot.owner for spot in count.at}
        case _:
            assert_never(count)
    return next(iter(owners)) if len(owners) == 1 else SHARED


def home_of(voice: Voice, at: object) -> SideId | None:
    """The side at whose home a step is, or None."""
    if not isinstance(at, OnStep):
        return None
    track = next(track for track in voice.play.tracks if track.id == at.track)
    return {0: track.homes[0], track.steps: track.homes[1]}.get(at.step)

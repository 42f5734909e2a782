"""Tracks on the floor: rows of steps between the homes of two sides."""

from __future__ import annotations

from compose.staging.floor.regions import Ground
from compose.staging.floor.values import FloorTrack
from grammar.game import Game


def tracks_of(game: Game, ground: Ground) -> tuple[FloorTrack, ...]:
    """Every track of the sheet with the x of each of its steps."""
    found = (track_of(game, ground, track.name) for track in game.tracks)
    return tuple(track for track in found if track is not None)


def track_of(game: Game, ground: Ground, name: str) -> FloorTrack | None:
    """One track. Assumed: it runs over a zone across the middle in which nobody enters or acts, else over all."""
    meaning = game.vocabulary.get(name)
    known = game.track_named(getattr(meaning, "place", name)) or game.track_named(name)
    if known is None:
        return None
    low, high = 0.0, ground.length_m
    for area in ground.areas:
        box = area.rectangle
        closed = {"enters", "acts"} & set(area.forbidden)
        if closed and box.left < ground.length_m / 2 < box.right and box.width >= ground.width_m:
            low, high = box.left, box.right
    if known.start in ground.sides and ground.facing(known.start) < 0:
        low, high = high, low
    steps = tuple(low + (high - low) * step / known.steps for step in range(known.steps + 1))
    return FloorTrack(known.name, known.start, known.goal, steps, ground.width_m)

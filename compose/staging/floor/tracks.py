"""Tracks on the floor: rows of steps between the homes of two sides."""

from __future__ import annotations

from compose.staging.floor.ground import Ground
from compose.staging.floor.values import KEPT_OFF, FloorTrack
from grammar.core.declared import Track


def track_on(ground: Ground, track: Track) -> FloorTrack:
    """The x of each step. Assumed: it runs over a zone across the middle in which nobody enters or acts, else over
    all."""
    low, high = 0.0, ground.length_m
    for area in ground.areas:
        box = area.rectangle
        if area.shut & KEPT_OFF and box.left < ground.length_m / 2 < box.right and box.width >= ground.width_m:
            low, high = box.left, box.right
    start, goal = track.homes
    if ground.facing(start) < 0:
        low, high = high, low
    steps = tuple(low + (high - low) * step / track.steps for step in range(track.steps + 1))
    return FloorTrack(track.id.key, start.key, goal.key, steps, ground.width_m)

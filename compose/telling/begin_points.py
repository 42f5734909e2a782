"""Points at the start, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from compose.telling.services import grouped
from compose.telling.voice import Voice
from grammar.core.begin_points import BeginPoints
from grammar.core.declared import Per


def begin_points_told(voice: Voice, values: Sequence[BeginPoints]) -> Iterator[str]:
    """How many points a side, or each player, has at the start."""
    for group in grouped(values, "side"):
        points = voice.wording.counted(group[0].number, "point", "points")
        sides = [each.side for each in group]
        if group[0].per is Per.PLAYER:
            who = voice.players(voice.play.populations(*sides), "each", False)
            yield voice.say("{who} begins with {points}", who=who, points=points)
        else:
            yield voice.does(sides, "{side} begins with {points}", "{side} begin with {points}", points=points)

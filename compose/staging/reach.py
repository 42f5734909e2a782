"""What a rolled ball can reach, as far as heights go."""

from __future__ import annotations

import library
from grammar.core.declared import Kind
from grammar.core.values import Skill

ON_THE_FLOOR = (Skill.ROLL,)  # skills whose ball stays on the floor
USUAL_BALL_M = 0.2  # assumption: how high a ball is that the kit does not know


def reaches(thing: Kind, ball: Kind | None, through: bool) -> bool:
    """Whether a rolled ball meets a thing, or goes `through` it: only where that stands on the floor, open in front."""
    return (rim_m(thing) <= 0.0) if through else (foot_m(thing) <= _ball_m(ball))


def rim_m(thing: Kind) -> float:
    """How high above the floor a ball is that just goes in: over the edge of what opens up."""
    item = library.kit_names().get(thing.like.key)
    return foot_m(thing) + (item.size_m[1] * float(thing.scale) if item and item.opens == "up" else 0.0)


def foot_m(thing: Kind) -> float:
    """How high above the floor the lower edge of a thing is, in metres."""
    item = library.kit_names().get(thing.like.key)
    return item.stands_above_floor_cm.usual / 100 if item and item.stands_above_floor_cm else 0.0


def _ball_m(ball: Kind | None) -> float:
    item = library.kit_names().get(ball.like.key) if ball else None
    return item.diameter_cm.usual / 100 if item and item.diameter_cm else USUAL_BALL_M

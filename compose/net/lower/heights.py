"""What a ball can reach, as far as heights go, and the sizes of things in metres."""

from __future__ import annotations

import library
from compose.net.lower.builder import Builder
from compose.net.outcome import Moment
from compose.staging.floor.touching import safe_share
from grammar.core.declared import Doing, Kind
from grammar.core.game import Play
from grammar.core.play import AtPlayers, AtThing, Through
from grammar.core.values import Population, Skill

ON_THE_FLOOR = (Skill.ROLL,)  # skills whose ball stays on the floor
USUAL_BALL_M = 0.2  # assumption: how high a ball is that the kit does not know


def sizes_m(play: Play) -> dict[str, tuple[float, float]]:
    """Width and height in metres of everything in the kit that the library knows, as the sheet scales it."""
    known = library.kit_names()
    found = {}
    for kind in play.kinds:
        if kind.like.key in known:
            width, height = known[kind.like.key].size_m
            found[kind.id.key] = (width * float(kind.scale), height * float(kind.scale))
    return found


def share_safe(builder: Builder, by: Population, who: Population, skill: Skill | None) -> float:
    """How much of the time a population is safe from what another one does to it, by touch or with a ball."""
    return safe_share(builder.play, who, by, Doing.TOUCH if skill is Skill.TOUCH else Doing.HIT)


def can_succeed(builder: Builder, moment: Moment) -> bool:
    """Whether an attempt can reach what it is aimed at, as far as heights go, or whom it is to touch."""
    aim = moment.aim
    if isinstance(aim, AtPlayers) and moment.person is not None:
        return share_safe(builder, moment.by, moment.person, moment.skill) < 1.0
    if moment.skill not in ON_THE_FLOOR or not isinstance(aim, AtThing | Through):
        return True
    thing = builder.play.kind(aim.thing.kind)
    return reaches(thing, builder.play.kind(moment.ball) if moment.ball else None, isinstance(aim, Through))


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

"""Which attempts can reach what they are at, and the sizes of things in metres."""

from __future__ import annotations

import library
from compose.net.lower.builder import Builder
from compose.net.outcome import Moment
from compose.staging.floor.touching import safe_share
from compose.staging.reach import ON_THE_FLOOR, reaches
from grammar.core.declared import Doing
from grammar.core.game import Play
from grammar.core.play import AtPlayers, AtThing, Through
from grammar.core.values import Population, Skill


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

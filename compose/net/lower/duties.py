"""Tasks that pass on, with those who have them at the set-up."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.duties import Duty
from compose.net.lower.builder import Builder
from grammar.core.rotation import Occasion, Rotation, Tries, circle_of
from grammar.core.values import PLAIN, Population, RoleId, SideId


def duties_of(builder: Builder) -> Iterator[Duty]:
    """One for each task that passes on to somebody; nobody moves on to a task that nobody has."""
    for rotation in builder.play.rotations:
        having = _having(builder, rotation)
        own = having.pop(rotation.who, 0)
        if not own or not having:
            continue
        yield Duty(
            task=_task(builder, rotation.who),
            side=rotation.who.side.key,
            holders=own,
            players=own + sum(having.values()),
            every=rotation.every if isinstance(rotation.every, Occasion | Tries) else float(rotation.every),
            place=builder.core.lines[rotation.lines[0]].span,
            moving=min(own, min(having.values()) if rotation.onward is not None else sum(having.values())),
            onward=_task(builder, next(iter(having))) if rotation.onward is not None else "",
        )


def _having(builder: Builder, rotation: Rotation) -> dict[Population, int]:
    """The tasks between which pupils pass, with how many have each: a task by itself passes on to all others of the
    side, a whole side to the other one."""
    who, play = rotation.who, builder.play
    if rotation.onward is not None:
        circle = circle_of(rotation, play.rotations)
    elif isinstance(who.role, RoleId):
        circle = tuple(Population(who.side, role) for role in play.tasks_of(who.side))
    else:
        circle = tuple(Population(side, role) for side in play.side_ids for role in play.tasks_of(side))
    numbers = {each: number for side in {each.side for each in circle} for each, number in _on(builder, side).items()}
    return {each: numbers[each] for each in circle if numbers[each]}


def _on(builder: Builder, side: SideId) -> dict[Population, int]:
    """How many of a side have each task at the start."""
    left, found = builder.players[side], dict[Population, int]()
    for role in (each for each in builder.play.roles if each.side == side):
        found[Population(side, role.id)] = min(role.least, left)
        left -= found[Population(side, role.id)]
    return {**found, Population(side, PLAIN): left}


def _task(builder: Builder, who: Population) -> str:
    """What somebody is called who has it."""
    if isinstance(who.role, RoleId):
        return who.role.key
    return dict(builder.core.called).get(who.side, "player")

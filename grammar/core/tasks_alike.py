"""A role that does, and has done to it, just what those of its side do who have none: it is no task of its own."""

from __future__ import annotations

from typing import Any

from attrs import evolve

from grammar.core.declared import Role
from grammar.core.game import Play
from grammar.core.renaming import changed
from grammar.core.rules import Becoming
from grammar.core.values import PLAIN, Laden, Population, Spot


def plays_like_all(play: Play, role: Role) -> bool:
    """Whether all stays the same where those with a role and those without one change places: how many have it, to whom
    it passes on, and that others than they start somewhere else, says nothing then."""
    other = {role.id: PLAIN, PLAIN: role.id}

    def exchange(part: Any) -> Any:
        match part:
            case Population() if part.side == role.side:
                own = part.role
                exchanged = evolve(own, role=_of(own.role)) if isinstance(own, Laden) else _of(own)
                return Population(part.side, exchanged)
            case Becoming() if part.role == role.id:
                return evolve(part, role=PLAIN)
            case Spot() if part.role == role.id:  # they alone have the ball there
                return evolve(part, role=None)
        return None

    def _of(task: Any) -> Any:
        return other.get(task, task)

    distinct = (role.aims_from_m, role.uses) != (None, None) or not role.aimed_at
    starts = tuple(start for start in play.starts if start.what != Population(role.side, PLAIN))
    bare = evolve(play, roles=(), rotations=(), before=frozenset(), starts=starts)
    exchanged = changed(bare, exchange)
    return not distinct and _in_any_order(exchanged) == _in_any_order(bare)


def _in_any_order(play: Play) -> tuple[Play, frozenset[object]]:
    """What hangs on a switch hangs on it in whichever order it comes."""
    hanging = frozenset((choice.id, value) for choice in play.choices for value in choice.hanging)
    return evolve(play, choices=()), hanging

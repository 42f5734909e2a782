"""Those whom only play knows, the lives that they lose and win, and that they play on."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum

from grammar.core.values import Population
from grammar.frozen import field, frozen


class Person(Enum):
    """Somebody whom only play knows."""

    ACTOR = "who acted"
    OBJECT = "who was hit"
    CATCHER = "who caught"
    MATE = "the team-mate who has it"
    KEEPER = "a player of the thing's side"


@frozen
class LifeOf:
    """Somebody in play loses a life (-1), or gets one back (1), never more than at the start."""

    who: Person
    by: int


class PlayOn(Enum):
    """Who was hit, or whose ball was caught, plays on; LESS_A_LIFE: nothing else changes but what the line says."""

    PLAY_ON = "plays on"
    LESS_A_LIFE = "plays on with a life less"


@frozen
class AllPlaying:
    """All of these players who are in play; `unsaid`: of the one side that the line does not name."""

    who: frozenset[Population]
    unsaid: bool = field(default=False, eq=False)


@frozen
class Nothing:
    """Nothing follows: what wider lines of the sheet write after the same event does not hold then."""

    instead_of: frozenset[object] = frozenset()


def nothing_follows(effects: Iterable[object]) -> bool:
    """Whether play only goes on by these."""
    return all(isinstance(each, PlayOn | Nothing) for each in effects)

"""What alone counts as a success, how far one may go with a ball in the hand, and who sits or kneels."""

from __future__ import annotations

from enum import Enum

from grammar.core.play import Aim, AtPlayers, AtThing, Lines, Through
from grammar.core.skills import FLYING
from grammar.core.values import KindId, Population, Skill, Thing
from grammar.frozen import field, frozen


class Valid(Enum):
    """What must be so for an attempt to count."""

    AFTER_BOUNCE = "after a bounce"
    DIRECT_HIT = "hit after a bounce"
    DIRECT_CATCH = "catch after a bounce"
    NO_WALL_HIT = "hit off the wall"
    NO_WALL_CATCH = "catch off the wall"
    BELOW_SHOULDER = "shoulder"
    BELOW_HIP = "hip"
    BELOW_KNEE = "knee"


DIRECT = (Valid.DIRECT_HIT, Valid.DIRECT_CATCH)


@frozen
class CountsOnly:
    """Attempts count only where this is so: all that fly, those that hit players, those that have not bounced
    or not touched a wall; `of`: only where one of these is hit, any where there are none."""

    valid: Valid
    lines: Lines = field(eq=False)
    of: frozenset[Population | Thing] = frozenset()

    def rules_out(self, hit: Population | Thing | None) -> bool:
        """Whether it is about attempts that hit this."""
        return not self.of or hit in self.of


def counts_by_bounce(skill: Skill, aim: Aim) -> bool:
    """Whether an attempt is one of those that count only after a bounce, where a line says so."""
    return skill in FLYING and isinstance(aim, AtThing | AtPlayers | Through)


@frozen
class Steps:
    """Nobody goes more steps than these with a ball of this kind in the hand."""

    ball: KindId
    most: int
    lines: Lines = field(eq=False)


class Posture(Enum):
    """How low somebody plays."""

    SEATED = "seated"
    KNEELING = "kneeling"


@frozen
class LowDown:
    """These players sit or kneel while they play."""

    who: Population
    posture: Posture
    lines: Lines = field(eq=False)

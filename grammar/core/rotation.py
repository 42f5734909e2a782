"""Tasks that pass from pupil to pupil while all else stays as it is."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from fractions import Fraction

from grammar.core.play import Lines
from grammar.core.values import Population
from grammar.frozen import field, frozen


class Occasion(Enum):
    """After what a task passes on, where no time is said."""

    ROUND = "round"
    POINT = "point"
    AGAINST = "point of the other side"


@frozen
class Tries:
    """After so many attempts of those who have the task."""

    number: int


@frozen
class Rotation:
    """After so many seconds, each round or each point others have this task, in turn: others of the side, or, where all
    of the side have it, those of the other one, who then change sides with them.

    Pupils are alike, so that the odds of the tasks stay as they are; what changes is who has one for how long.
    Where `onward` says which task comes after it, tasks stand in a circle: as many move on at a time as have the task
    of the fewest.
    """

    who: Population
    every: Fraction | Occasion | Tries
    lines: Lines = field(eq=False)
    onward: Population | None = None


def circle_of(rotation: Rotation, rotations: Iterable[Rotation]) -> tuple[Population, ...]:
    """All tasks of a circle, from this one onwards; those of one that passes on by itself are it alone."""
    onward = {each.who: each.onward for each in rotations}
    found = [rotation.who]
    while (after := onward[found[-1]]) is not None and after != rotation.who:
        found.append(after)
    return tuple(found)

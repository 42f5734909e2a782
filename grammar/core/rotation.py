"""Tasks that pass from pupil to pupil while all else stays as it is."""

from __future__ import annotations

from fractions import Fraction

from grammar.core.play import Lines
from grammar.core.values import Population
from grammar.frozen import field, frozen


@frozen
class Rotation:
    """After so many seconds (None: after each round) others of the side have this task, in turn.

    Pupils of a side are alike, so that the odds stay as they are; what changes is who has the task for how long.
    """

    who: Population
    every_s: Fraction | None
    lines: Lines = field(eq=False)

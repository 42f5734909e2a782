"""Targets that are down stand up again, all of them or one, without anybody who does it."""

from __future__ import annotations

from grammar.core.values import Thing
from grammar.frozen import field, frozen


@frozen
class StandAgain:
    """All of these things that are down stand up, or one of them.

    `unsaid`: the line speaks of one side, and does not say whose they are.
    """

    things: frozenset[Thing]
    all: bool
    unsaid: bool = field(default=False, eq=False)

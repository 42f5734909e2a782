"""Successes in a row."""

from __future__ import annotations

from grammar.core.values import SideId, Skill
from grammar.frozen import frozen


@frozen
class InARow:
    """A side has so many successes with these skills in a row; the count begins anew then, and with each failure."""

    side: SideId
    skills: frozenset[Skill]
    number: int

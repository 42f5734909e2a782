"""Fouls: who breaks a rule of fair play."""

from __future__ import annotations

from grammar.core.values import Population, SideId
from grammar.frozen import frozen


@frozen
class Fouled:
    """A player of these, in play, fouls: pushes, steps over a line, holds on to somebody; of one of these sides."""

    who: frozenset[Population]
    against: frozenset[SideId]

"""Lives: how many each player has, and how they come and go."""

from __future__ import annotations

from grammar.core.play import Lines
from grammar.core.values import Population
from grammar.frozen import field, frozen


@frozen
class Lives:
    """Each player of these has so many lives; whoever comes back into play has all of them again."""

    who: Population
    number: int
    lines: Lines = field(eq=False)


@frozen
class LastLife:
    """A player of these loses the last life."""

    who: frozenset[Population]

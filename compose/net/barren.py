"""A line that comes to nothing."""

from __future__ import annotations

from grammar.frozen import frozen
from grammar.span import Span


@frozen
class Barren:
    """A line of which the sheet shows that nothing comes of it: the places of what it is aimed at, which it therefore
    never changes, and the lines about what would come of it."""

    at: Span
    aimed: frozenset[int]
    about: frozenset[Span] = frozenset()

"""Tasks that pass from pupil to pupil, with how many have one of how many."""

from __future__ import annotations

from grammar.core.rotation import Occasion
from grammar.frozen import frozen
from grammar.span import Span


@frozen
class Duty:
    """`holders` of the `players` of a side have a task at a time; others have it after that (in seconds)."""

    task: str
    side: str
    holders: int
    players: int
    every: float | Occasion
    place: Span

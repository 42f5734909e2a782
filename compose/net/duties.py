"""Tasks that pass from pupil to pupil, with how many have one of how many."""

from __future__ import annotations

from math import ceil

from grammar.core.rotation import Occasion, Tries
from grammar.frozen import frozen
from grammar.span import Span


@frozen
class Duty:
    """`holders` of the `players` of a side have a task at a time; after that (in seconds) so many are `moving` to it.

    Whoever had it goes on to the task `onward`; "" where they go back among the others.
    """

    task: str
    side: str
    holders: int
    players: int
    every: float | Occasion | Tries
    place: Span
    moving: int
    onward: str = ""

    @property
    def turns(self) -> int:
        """After how many turns everybody has had the task: the first is of those who have it at the start."""
        return 1 + ceil((self.players - self.holders) / self.moving)

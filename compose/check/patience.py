"""The time that a check may take: every long pass over the space asks whether there is any left."""

from __future__ import annotations

import time

from compose.check.space import USUAL, Budget


class OutOfTimeError(Exception):
    """Raised inside the check where its time is up; `check` turns it into a finding."""


class Patience:
    """Starts with the check and runs out after the budget's seconds, or when somebody stops it."""

    def __init__(self, budget: Budget = USUAL) -> None:
        self._budget = budget
        self._begun = time.perf_counter()

    @property
    def left(self) -> float:
        """Seconds left, not below 0."""
        return max(0.0, self._budget.seconds - (time.perf_counter() - self._begun))

    def asked(self, what: str, done: int = 0, of: int = 0) -> None:
        """Go on with the next step; raises OutOfTimeError where there is no time for it."""
        if self.left <= 0 or not self._budget.keep_going(what, done, of):
            raise OutOfTimeError(what)

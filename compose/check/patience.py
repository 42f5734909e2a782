"""Whoever watches a check may stop it: every long pass over the space asks before it goes on."""

from __future__ import annotations

from compose.check.space import USUAL, Budget


class StoppedError(Exception):
    """Raised inside the check where somebody stopped it; `check` turns it into a finding."""


class Patience:
    """Asks whoever gave the budget."""

    def __init__(self, budget: Budget = USUAL) -> None:
        self._budget = budget

    def asked(self, what: str, done: int = 0, of: int = 0) -> None:
        """Go on with the next step; raises StoppedError where it was stopped."""
        if not self._budget.keep_going(what, done, of):
            raise StoppedError(what)

"""A question to a worker: a function by its name and plain values, so that it can cross to another process."""

from __future__ import annotations

import hashlib
import pickle
from typing import Any

from grammar.frozen import frozen


@frozen
class Question:
    """`asks` is "module:function" of compose.page.answers; `given` are its arguments, all of them plain values.

    Whole texts stand in `given`, never names of files: the same question has the same answer.
    """

    asks: str
    given: tuple[Any, ...] = ()

    @property
    def about(self) -> Any:
        """What several questions can be about, so that who answered one knows half of the others."""
        return self.given[0] if self.given else None

    @property
    def key(self) -> str:
        """What the answer is kept under."""
        return hashlib.sha256(pickle.dumps((self.asks, self.given), protocol=5)).hexdigest()


class SupersededError(Exception):
    """Nobody waits for the answer any more: a newer question came from the same tab."""


class GivenUpError(Exception):
    """The worker took too long, needed too much memory, or broke down; the words say which."""

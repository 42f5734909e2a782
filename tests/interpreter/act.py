"""Something that happens beside attempts."""

from __future__ import annotations

from attrs import frozen

from tests.interpreter.board import Board


@frozen
class Act:
    """Something that happens, in words that any telling must hold, and the board after it."""

    told: tuple[str, ...]
    after: Board

"""The last game that was read without what is taken for granted: it is read with that next, by the same lines."""

from __future__ import annotations

from grammar.core.reading.sheet.sheet_pass import Reading
from grammar.game import Game

_last: dict[str, tuple[Game, Reading]] = {}


def keep(game: Game, reading: Reading) -> None:
    """Keep the sheet's own lines as they were read."""
    _last["read"] = game, reading


def reread(game: Game) -> Reading | None:
    """The same of this very game, for one who goes on reading; None where another one was kept, or none."""
    found = _last.pop("read", None)  # given out once: whoever has it writes into it
    return found[1] if found is not None and found[0] is game else None

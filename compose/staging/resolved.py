"""The core of a game that is at hand as a tree. It is read once, however many ask for it."""

from __future__ import annotations

from threading import RLock

from attrs import evolve

import library
from grammar.core.game import Core
from grammar.core.reading.from_game import core_of
from grammar.finding import Outcome
from grammar.game import Game
from grammar.tree import GameSheet

KEPT = 16  # our choice: how many cores are kept
_one_at_a_time = RLock()  # of the threads of a page
_read: dict[tuple[int, ...], tuple[object, Core]] = {}


def reading_of(game: Game, granted: GameSheet | None = None) -> Outcome[Core]:
    """The core of a game, or what in it means nothing, read anew; the library says what never falls."""
    return core_of(game, granted or library.granted_sheet(), library.fixed_kit())


def resolved(game: Game, granted: GameSheet | None = None) -> Core:
    """The core of a game, with what the library's sheet takes for granted unless another one is given.

    A game under another title has the same core, but for the title.
    """
    assumed = granted or library.granted_sheet()
    parts = (game.sheet.head, game.sheet.sections, assumed)
    key = tuple(id(part) for part in parts)
    with _one_at_a_time:
        if key not in _read:
            read = reading_of(game, assumed).value
            assert read is not None, "a game whose names are known has a core"
            while len(_read) >= KEPT:
                del _read[next(iter(_read))]
            _read[key] = parts, read  # the parts are kept, so that their ids stay theirs
        _read[key] = _read.pop(key)  # what is asked for again and again is the last to go
        core = _read[key][1]
    return core if core.title == game.title else evolve(core, title=game.title)

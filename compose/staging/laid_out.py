"""The floor of a game with the library's kit. It is laid out once, however many ask for it."""

from __future__ import annotations

from collections.abc import Mapping
from threading import RLock

import library
from compose.staging.floor.floor import floor_of
from compose.staging.floor.values import Floor
from compose.staging.resolved import KEPT, resolved
from grammar.core.game import Core
from grammar.core.values import SideId
from grammar.game import Game

_one_at_a_time = RLock()  # of the threads of a page
_laid: dict[tuple[int, tuple[tuple[str, int], ...]], tuple[Core, Floor]] = {}


def laid_out(game: Game, players: Mapping[str, int]) -> Floor:
    """The floor with so many players of each side, everything at its place, the kit as large as the library has it."""
    core = resolved(game)
    key = id(core), tuple(players.items())
    with _one_at_a_time:
        if key not in _laid:
            sizes_m = {name: item.size_m for name, item in library.kit_names().items()}
            floor = floor_of(core, {SideId(side): number for side, number in players.items()}, sizes_m)
            while len(_laid) >= KEPT:
                del _laid[next(iter(_laid))]
            _laid[key] = core, floor  # the core is kept, so that its id stays its own
        _laid[key] = _laid.pop(key)  # what is asked for again and again is the last to go
        return _laid[key][1]

"""The floor of a game with the library's kit."""

from __future__ import annotations

from collections.abc import Mapping

import library
from compose.staging.floor.floor import floor_of
from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from grammar.core.values import SideId
from grammar.game import Game


def laid_out(game: Game, players: Mapping[str, int]) -> Floor:
    """The floor with so many players of each side, everything at its place, the kit as large as the library has it."""
    sizes_m = {name: item.size_m for name, item in library.kit_names().items()}
    return floor_of(resolved(game), {SideId(side): number for side, number in players.items()}, sizes_m)

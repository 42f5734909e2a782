"""Every game of the library has floor for as many players as its sheet allows."""

from __future__ import annotations

import pytest

import library
from compose.staging.laid_out import laid_out
from tests.interpreter.sheets import library_game


@pytest.mark.parametrize("name", sorted(path.stem for path in library.game_paths()))
def test_as_many_as_a_sheet_allows_find_a_place(name: str) -> None:
    """Of four lanes side by side the inner two had no place for the eighth."""
    game = library_game(name)
    floor = laid_out(game, {side.name: side.most for side in game.sides})
    assert floor.problems == ()
    assert sum(item.category == "player" for item in floor.items) >= sum(side.most for side in game.sides)

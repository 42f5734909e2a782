"""How the players of the sides are told."""

from __future__ import annotations

import pytest

import library
from compose.page.answers.at_hand import game_of
from compose.page.answers.for_class import fitted
from compose.staging.school_class import some_class
from compose.telling.for_class import teams_said


@pytest.mark.parametrize(
    ("slug", "pupils", "said"),
    [
        ("pebble-pairs", 2, "1 roller and 1 gatherer"),
        ("pebble-pairs", 6, "3 games of 1 roller and 1 gatherer"),
        ("toll-stone", 2, "1 west and 1 east"),  # not called by its players
        ("lantern-row", 13, "7 north and 6 south"),
    ],
)
def test_one_player_is_not_called_as_several_are(slug: str, pupils: int, said: str) -> None:
    path = next(path for path in library.game_paths() if path.stem == slug)
    game = game_of((path.read_text(encoding="utf-8"),)).value
    assert game is not None
    assert teams_said(fitted(game, some_class(pupils)).staging) == said

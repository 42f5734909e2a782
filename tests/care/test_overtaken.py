"""What an author minds of balls on the floor is told with a word where a remix lets all of them fly."""

from __future__ import annotations

import pytest
from scenes import library_games, modifier_named

import library
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.staging.cautions import cautions_of
from compose.staging.resolved import resolved
from compose.telling.cautions import cautions_told

SAID = "here they fly"


def cautions(game: str, *modifiers: str) -> str:
    uses = [Use(modifier_named(name), {}) for name in modifiers]
    made = remix(library_games()[game], uses, library.kit_names()).value
    assert made is not None
    return " ".join(cautions_told(cautions_of(resolved(made.game), (), library.kit_names())))


@pytest.mark.parametrize("instead", ["underarm instead", "overarm instead", "kick instead"])
def test_balls_that_fly_do_not_stay_on_the_floor(instead: str) -> None:
    assert SAID not in cautions("cobble-lane")
    assert SAID in cautions("cobble-lane", instead)
    assert "soft balls only" in cautions("cobble-lane", instead)


def test_of_no_game_of_the_library_it_is_said_as_it_stands() -> None:
    assert not [name for name in library_games() if SAID in cautions(name)]

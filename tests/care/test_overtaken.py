"""What an author minds of balls on the floor is not said where a remix lets all of them fly; what else it says is."""

from __future__ import annotations

import pytest
from scenes import library_games, modifier_named

import library
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use
from compose.staging.cautions import Caution, cautions_of
from compose.staging.resolved import resolved
from compose.telling.cautions import cautions_told

FLOOR = "on the floor"


def cautions(game: str, *modifiers: str) -> str:
    uses = [Use(modifier_named(name), {}) for name in modifiers]
    made = remix(library_games()[game], uses, library.kit_names()).value
    assert made is not None
    return " ".join(cautions_told(cautions_of(resolved(made.game), (), library.kit_names())))


@pytest.mark.parametrize("instead", ["underarm instead", "overarm instead", "kick instead"])
def test_balls_that_fly_do_not_stay_on_the_floor(instead: str) -> None:
    assert FLOOR in cautions("cobble-lane")
    assert FLOOR not in cautions("cobble-lane", instead)
    assert "Whoever stands up a cobble looks up first." in cautions("cobble-lane", instead)
    assert "soft balls only" in cautions("cobble-lane", instead)


def test_a_text_of_nothing_else_is_told_as_words_of_before() -> None:
    (told,) = cautions_told([Caution("Balls stay on the floor.", overtaken=(0,))])
    assert told == "Before it was changed: Balls stay on the floor."


def test_of_no_game_of_the_library_anything_is_overtaken_as_it_stands() -> None:
    kit = library.kit_names()
    said = [each for game in library_games().values() for each in cautions_of(resolved(game), (), kit)]
    assert not [each for each in said if each.overtaken]

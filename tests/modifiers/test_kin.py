"""Where a modifier does not fit, one that is much the same and does is named, and only such ones."""

from __future__ import annotations

import re

import pytest
from mixtures import library_games

import library
from compose.modifiers.apply import remix
from compose.modifiers.kin import with_kin
from compose.modifiers.modifier import Use
from compose.modifiers.of_library import library_modifiers

KIT = library.kit_names()
MODIFIERS = {each.name: each for each in library_modifiers()}


def hints(game: str, name: str) -> str:
    """What is advised where the modifier does not fit the game."""
    outcome = remix(library_games()[game], (Use(MODIFIERS[name]),), KIT)
    assert outcome.value is None
    return " ".join(each.hint for each in with_kin(outcome.findings, library_games()[game], [MODIFIERS[name]], KIT))


@pytest.mark.parametrize(
    ("game", "name", "instead"),
    [
        ("heron-and-pike", "time limit on points", "time limit on players"),
        ("lantern-row", "time limit on players", "time limit"),
        ("ferry-bench", "kick instead", "roll instead"),
        ("ferry-bench", "kick instead", "underarm instead"),
    ],
)
def test_what_fits_instead_is_named_and_fits(game: str, name: str, instead: str) -> None:
    named = re.findall(r"`([^`]+)`", hints(game, name))
    assert instead in named and name not in named
    for each in named:
        assert remix(library_games()[game], (Use(MODIFIERS[each]),), KIT).value is not None


def test_nothing_is_named_where_nothing_like_it_fits() -> None:
    assert "can have" not in hints("ferry-bench", "more targets")

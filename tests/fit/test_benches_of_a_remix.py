"""Modifiers that put more benches out than the game has need them in the cupboard; the game's own stand in any hall."""

from __future__ import annotations

import pytest
from class_sheets import sheet_of
from playing_games import game_in, granted_rules, library_games

import library
from compose.fit.suggest.class_wishes import Part, fits
from compose.fit.suggest.look import Looker
from grammar.format import format_game
from grammar.game import Game

CLASS = """
    class Few
      class of 20
      40 foam balls
      40 plastic pins
      {more}
    """


def kit_misses(base: Game, remixed: Game, more: str) -> list[str]:
    """What of the kit is missing in a remix of a game."""
    group = sheet_of(CLASS.format(more=more))
    looker = Looker(granted_rules(), library.kit_names(), library.norms(), group=group)
    wishes = [each for each in fits(group, base) if each.part is Part.KIT and not each.thing]
    return [miss.words for each in wishes if not (miss := each.miss(remixed, looker)).met]


@pytest.mark.parametrize(("more", "told"), [("2 benches", False), ("1 bench", True), ("6 cones", True)])
def test_benches_of_a_remix_are_held_against_the_cupboard(more: str, told: bool) -> None:
    base = library_games()["lantern-row"]
    strip = "dim strip: 2 m deep, before each back line, nobody guards there"
    benched = game_in(format_game(base.sheet).replace(strip, f"{strip}\n  rest bench: beside each half"))
    assert bool(found := kit_misses(base, benched, more)) is told, found
    assert all("bench" in each for each in found)
    assert not kit_misses(benched, benched, more), "its own benches stand in the hall"

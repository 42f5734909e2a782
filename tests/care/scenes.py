"""A sound game on its floor, and what is reminded of when lines of it are changed."""

from __future__ import annotations

import sys
from pathlib import Path

import library
from compose.care.reminders import reminders
from compose.care.scene import Scene
from compose.staging.laid_out import laid_out
from compose.staging.resolved import resolved
from grammar.finding import Finding
from grammar.game import Game

sys.path.append(str(Path(__file__).parents[1] / "fit"))

from playing_games import game_in, library_games, modifier_named

__all__ = ["changed", "codes", "game_in", "library_games", "modifier_named", "reminded"]

SOUND = """
    game Sound
      ages 9 to 12
      about "Invented."

    space
      court 18 m by 9 m, halved across
      far bench: behind each back line
      gorse zone: 2 m deep, before each back line
      waiting queue: beside each half

    sides
      larks and owls, 4 to 8 players each, mirrored

    kit
      8 foam balls
      4 pins for each side
      2 gangways for each side, like a bench
      4 mats for each side

    set-up
      pins on the back line of their side, evenly spaced
      4 foam balls in each half
      gangways on the far bench of their side
      mats behind the back line of their side

    play
      players stay in their half
      players overarm throw a foam ball at the pins of the other side

    when
      a pin is knocked: it stays down

    finish
      a side wins when the other side has no pins standing
      after 5 min: a draw
    """
Changes = tuple[tuple[str, str], ...]


def changed(*changes: tuple[str, str]) -> Game:
    """The sound game with pieces of its text changed; each piece must be there."""
    text = SOUND
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return game_in(text)


def reminded(game: Game, ages: tuple[float, float] | None = None, walls_m: float | None = None) -> tuple[Finding, ...]:
    """The reminders of a game for pupils of these ages, else of its own, with such strips around it in a hall."""
    core = resolved(game)
    floor = laid_out(game, {side.name: side.least for side in game.sides})
    years = ages or game.ages_years
    return reminders(Scene(core, floor, years, library.kit_names(), library.norms(), walls_m, walls_m))


def codes(found: tuple[Finding, ...]) -> list[str]:
    return [each.code for each in found]

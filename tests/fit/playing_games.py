"""Games for the tests of the fit: of the library and as texts, with a looker for each way to count players."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from textwrap import dedent

import library
from compose.fit.suggest.look import Looker
from compose.modifiers.modifier import Modifier
from compose.modifiers.of_library import library_modifiers as every_modifier
from compose.staging.teams import Teams, usual_teams
from grammar.game import Game
from grammar.parse import parse, parse_bytes
from grammar.resolve import resolve
from grammar.tree import GameSheet
from tests.interpreter.sheets import library_game


def game_in(text: str) -> Game:
    """The game in a text."""
    outcome = parse(dedent(text).lstrip("\n"))
    assert outcome.value is not None, [(each.place.line, each.title) for each in outcome.findings]
    return _resolved(outcome.value.games[0])


def _resolved(sheet: GameSheet) -> Game:
    found = resolve(sheet, library.kit_categories())
    assert found.value is not None, [each.title for each in found.findings]
    return found.value


@cache
def library_games() -> dict[str, Game]:
    """Every game of the library by the stem of its file."""
    return {path.stem: library_game(path.stem) for path in library.game_paths()}


def modifier_named(name: str) -> Modifier:
    """A modifier of the library."""
    return next(each for each in every_modifier() if each.name == name)


@cache
def granted_rules() -> GameSheet:
    """The rules that every game takes for granted."""
    path = library.granted_path()
    rules = parse_bytes(path.read_bytes(), path.name).value
    assert rules is not None
    return rules.games[0]


def looker(teams: Callable[[Game], Teams] = usual_teams, states: int = 60_000) -> Looker:
    """A looker that has seen nothing yet."""
    return Looker(granted_rules(), library.kit_names(), library.norms(), teams, states)

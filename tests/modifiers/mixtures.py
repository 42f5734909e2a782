"""What the tests of remixing share: the library's games and modifiers, texts as games, modifiers by their names."""

from __future__ import annotations

from functools import cache
from textwrap import dedent

import library
from compose.modifiers.apply import remix
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.of_library import library_modifiers
from compose.modifiers.remix import Remix
from grammar.core.reading.from_game import core_of
from grammar.finding import Outcome
from grammar.game import Game
from grammar.parse import parse, parse_bytes
from grammar.resolve import resolve
from grammar.sentences.base import Quantity
from grammar.tree import GameSheet, RuleFile
from tests.interpreter.sheets import library_game

MOST_KEPT = 100
ROW = """
    game Row
      ages 8 to 12
      skills overarm throw, catch
      credit "Tarn Valley schools (invented)"
      licence CC-BY-4.0

    space
      court 18 m by 9 m, halved across
      dim strip: 2 m deep, before each back line, nobody guards there
      long queue: beside each half

    sides
      north and south, 6 to 14 players each, mirrored

    kit
      8 foam balls
      5 lanterns for each side, like a plastic pin

    set-up
      lanterns on the back line of their side, evenly spaced
      4 foam balls in each half

    play
      players stay in their half
      players overarm throw a foam ball at the lanterns or the players of the other side

    when
      a lantern is knocked: it stays down
      a player is hit: that player waits in the long queue
      a ball is caught: the first in the catcher's long queue returns

    finish
      a side wins when the other side has no lanterns standing
      after 6 min: more lanterns standing wins, else a draw

    care
      "Aim low."
    """


def rules_in(text: str, file: str = "(test)") -> RuleFile:
    """All that a text says; the test fails where it has mistakes."""
    outcome = parse(dedent(text).lstrip("\n"), file)
    assert outcome.value is not None, [(each.place.line, each.title) for each in outcome.findings]
    return outcome.value


def game_of(text: str, file: str = "(test)") -> Game:
    """The game in a text."""
    return resolved(rules_in(text, file).games[0])


def resolved(sheet: GameSheet) -> Game:
    """The game that a sheet means."""
    outcome = resolve(sheet, library.kit_categories())
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value


def resolved_or_none(sheet: GameSheet) -> Game | None:
    """The game that a sheet means, with a core; None where it means none."""
    game = resolve(sheet, library.kit_categories()).value
    return game if game is not None and core_of(game, granted_sheet()).value is not None else None


@cache
def row() -> Game:
    """A game with targets, balls, a queue, a strip: most modifiers fit it."""
    return game_of(ROW)


@cache
def library_games() -> dict[str, Game]:
    """Every game of the library by the stem of its file."""
    return {path.stem: library_game(path.stem) for path in library.game_paths()}


@cache
def granted_sheet() -> GameSheet:
    """The rules that every game takes for granted."""
    path = library.granted_path()
    rules = parse_bytes(path.read_bytes(), path.name).value
    assert rules is not None
    return rules.games[0]


@cache
def modifiers_by_name() -> dict[str, Modifier]:
    """Every modifier of the library by its name."""
    return {each.name: each for each in library_modifiers()}


def use(name: str, **values: float) -> Use:
    """A modifier of the library with these values, in the unit that each takes."""
    modifier = modifiers_by_name()[name]
    units = {each.parameter: each.usually.unit for each in modifier.takes}
    return Use(modifier, {key: Quantity(float(value), units[key]) for key, value in values.items()})


def modifier_in(lines: str, name: str = "trial") -> Use:
    """A modifier of these lines, by this name."""
    text = f'modifier {name}\n  heading task\n  about "A trial."\n{dedent(lines)}\n'
    indented = [line if number < 3 else f"  {line}" for number, line in enumerate(text.splitlines())]
    modifier = modifier_of(rules_in("\n".join(indented)).modifiers[0])
    assert modifier.value is not None, [each.title for each in modifier.findings]
    return Use(modifier.value)


_mixed: dict[tuple[int, ...], tuple[object, Outcome[Remix]]] = {}


def mixed(game: Game, *uses: Use) -> Outcome[Remix]:
    """A remix, or why there is none; what one property asks for again is not made again."""
    key = (id(game), *map(id, uses))
    if key not in _mixed:
        if len(_mixed) >= MOST_KEPT:
            _mixed.clear()
        _mixed[key] = (game, uses), remix(game, uses, library.kit_names())  # with what has these ids
    return _mixed[key][1]


def made(game: Game, *uses: Use) -> Game:
    """The remixed game; the test fails where the modifiers do not go together."""
    outcome = mixed(game, *uses)
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value.game


def said(game: Game, section: str) -> list[str]:
    """The lines of a section in words."""
    return [line.sentence.words() for line in game.sheet.lines(section)]

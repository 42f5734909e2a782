"""Rule sheets → games and nets, for the tests: texts in a test, and files of the library."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from textwrap import dedent

import library
from compose.net.from_game import net_of
from compose.net.net import Net
from grammar.finding import Outcome
from grammar.game import Game
from grammar.parse import parse, parse_bytes
from grammar.resolve import resolve
from grammar.tree import GameSheet, RuleFile


def _whole(outcome: Outcome[RuleFile]) -> RuleFile:
    assert outcome.value is not None, [(finding.place.line, finding.title) for finding in outcome.findings]
    return outcome.value


@cache
def granted() -> GameSheet:
    """The sheet of rules that every game takes for granted."""
    return _whole(parse_bytes(library.granted_path().read_bytes(), "taken-for-granted.rules")).games[0]


def game_in(text: str, file: str = "(test)") -> Game:
    """The game that a text means; the test fails where the text has mistakes."""
    return _resolved(_whole(parse(dedent(text).lstrip("\n"), file)).games[0])


def game_at(path: Path) -> Game:
    """The game in a file."""
    return _resolved(_whole(parse_bytes(path.read_bytes(), path.name)).games[0])


def _resolved(sheet: GameSheet) -> Game:
    outcome = resolve(sheet, library.kit_categories())
    assert outcome.value is not None, [(finding.place.line, finding.title) for finding in outcome.findings]
    return outcome.value


@cache
def library_game(name: str) -> Game:
    """A game of the library by the stem of its file: "lantern-row"."""
    return game_at(next(path for path in library.game_paths() if path.stem == name))


def net_in(game: Game, players: Mapping[str, int] | None = None) -> Net:
    """The net of a game for so many players of each side; the test fails where there is none."""
    outcome = net_of(game, granted(), players)
    assert outcome.value is not None, [finding.title for finding in outcome.findings]
    return outcome.value

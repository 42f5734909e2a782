"""Where a line stands in its sheet is for people: a sheet with more lines that say nothing of play means the same."""

from __future__ import annotations

import pytest
from attrs import evolve

import library
from compose.net.from_game import net_of
from compose.staging.resolved import resolved
from grammar.game import Game
from grammar.parse import parse
from grammar.resolve import resolve
from grammar.tree import Line
from tests.interpreter.sheets import granted, library_game
from tests.net.exchange_verdicts import numbers

CUE = 'game Cue\n  cue "Look up."\n'


def further_down(game: Game) -> Game:
    """The game with three cues more in its head."""
    rules = parse(CUE).value
    assert rules is not None
    cues: tuple[Line, ...] = rules.games[0].head * 3
    moved = resolve(evolve(game.sheet, head=(*cues, *game.sheet.head)), library.kit_categories()).value
    assert moved is not None
    return moved


@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
def test_every_value_is_the_same_further_down(name: str) -> None:
    game = library_game(name)
    here, there = (resolved(each) for each in (game, further_down(game)))
    assert here.play == there.play and here.facts == there.facts
    assert len(there.lines) == len(here.lines) + 3


@pytest.mark.parametrize("name", [path.stem for path in library.game_paths()])
@pytest.mark.sample(4)
def test_the_same_core_gives_the_same_net(name: str) -> None:
    game = library_game(name)
    here, there = (net_of(each, granted()).value for each in (game, further_down(game)))
    assert here is not None and numbers(here) == numbers(there)

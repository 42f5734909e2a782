"""What is told of where balls stop is where the net lets them stop, in every game of the library and off courts."""

from __future__ import annotations

from pathlib import Path

import pytest
from told_sheets import row, told

import library
from compose.net.told import Strayed, Tried
from compose.staging.resolved import resolved
from compose.telling.balls_left import balls_left
from grammar.game import Game
from tests.interpreter.sheets import game_at, game_in, net_in

BENCH = {
    "space": "far bench: behind each back line",
    "when": "a player is hit: that player goes to the far bench of the other side",
    "play": "players in the far bench of the other side underarm throw a foam ball at the players of the other side\n"
    "players overarm throw a foam ball at the players of the other side",
}
ZONE = {name: lines.replace("far bench", "far zone") for name, lines in BENCH.items()}
ZONE["space"] = "far zone: 2 m deep, before each back line"
SHUT = {"space": "reed strip: 2 m deep, before each back line, nobody enters there"}
LEFT = {"space": "far bench: behind each back line", "play": "nobody fetches foam balls from behind the back line"}
SHEETS = {"bench": BENCH, "zone": ZONE, "shut": SHUT, "unfetched": LEFT}


def of_net(game: Game) -> set[tuple[object, object]]:
    """The balls with the places where nobody follows them."""
    moves = [move.told for move in net_in(game).transitions]
    tried = [each.missed if isinstance(each, Strayed) else each for each in moves]
    return {(each.moment.ball, each.stops) for each in tried if isinstance(each, Tried) and each.stops is not None}


def of_words(game: Game) -> set[tuple[object, object]]:
    left = [pair for part in balls_left(resolved(game).play) for pair in part]
    return {(kind, spot) for kinds, spots in left for kind in kinds for spot in spots}


@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
def test_in_every_game_of_the_library(path: Path) -> None:
    assert of_net(game_at(path)) == of_words(game_at(path))


@pytest.mark.parametrize("lines", SHEETS.values(), ids=SHEETS)
def test_where_nobody_follows(lines: dict[str, str]) -> None:
    game = game_in(row(None, **lines))
    assert of_net(game) == of_words(game) != set()


@pytest.mark.parametrize(("lines", "said"), [
    (BENCH, "Half of the foam balls that come to lie somewhere roll on that way and stop on"),
    (ZONE, "As many of the foam balls that come to lie somewhere stop in"),
    ({}, None),
])  # fmt: skip
def test_it_is_said(lines: dict[str, str], said: str | None) -> None:
    text = told(row(None, **lines))
    assert said in text if said else "that come to lie somewhere" not in text

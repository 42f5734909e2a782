"""The interpreter and the net read every game alike: the same states, the same results, the same moves."""

from __future__ import annotations

import pytest

import library
from compose.check import StateSpace, explore
from grammar.game import Game
from tests.interpreter.compare import moves_of_net, named
from tests.interpreter.remixes import remixed
from tests.interpreter.rounds import reachable, successors
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import game_at, game_in, granted, net_in
from tests.wrong_games.wrong import PAIRS

GAMES = {path.stem: path for path in library.game_paths()}
SMALL_SIDE, SMALL_CROWD = 2, 12
STACKS = (
    ("lantern-row", "kick-instead", "add-balls"),
    ("lantern-row", "more-targets", "time-limit"),
    ("heron-and-pike", "fewer-balls", "nobody-is-out"),
    ("millrace-roll", "roll-instead", "hold-limit"),
    ("ferry-bench", "fewer-balls"),
)
PATTERNS = {
    "starts again": "a cone is knocked: it stays down and the thrower's side scores 1 point\n"
    "  a side has no cones standing: everything starts again",
    "swaps with the queue": "a player is hit: that player changes places with the first in the rest queue\n"
    "  a cone is knocked: the thrower waits in the rest queue and the thrower's side scores 1 point",
    "while lines": "a cone is knocked while it has at least 2 players in: it stays down\n"
    "  a cone is knocked while it has no players in: the thrower's side scores 2 points\n"
    "  a player is hit while the thrower's side has 2 players in: that player waits in the rest queue",
    "wins at once": "a cone is knocked while it has 1 cone standing: the thrower's side wins\n"
    "  a player is hit: the thrower's side loses 1 point and that player joins the other side",
    "takes over": "a cone is knocked: it joins the thrower's side\n  a ball is missed: the thrower is out\n"
    "  a side has all cones standing: that side scores 3 points".replace("that side", "it"),
}
PATTERN_GAME = """
game Pattern
space
  court 18 m by 9 m, halved across
  rest queue: beside each half
sides
  north and south, 2 to 6 players each, mirrored
kit
  2 soft balls, like a foam ball
  2 cones for each side
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players stay in their half
  players underarm throw a soft ball at the cones or the players of the other side
  the teacher frees the first in each queue
when
  {rules}
finish
  the first side to 3 points wins
  both at once: a draw
"""


def players(game: Game) -> dict[str, int]:
    """As few players a side as still show everything; a crowd where everybody plays for themselves."""
    crowd = len(game.sides) == 1
    return {side.name: SMALL_CROWD if crowd else min(SMALL_SIDE, side.most) for side in game.sides}


def agree(game: Game, numbers: dict[str, int]) -> None:
    """Every state is reached by both, with the same result and the same moves out of it."""
    space = explore(net_in(game, numbers))
    assert isinstance(space, StateSpace) and space.complete
    sheet = Sheet(game, granted(), numbers)
    ours, theirs = reachable(sheet), named(space)
    assert ours.keys() == theirs.keys()
    assert ours == theirs
    for state, moves in moves_of_net(space).items():
        assert {after.state for after in successors(sheet, state)} == moves


@pytest.mark.parametrize("name", GAMES)
def test_library_game(name: str) -> None:
    game = game_at(GAMES[name])
    agree(game, players(game))


@pytest.mark.parametrize("stack", STACKS, ids=" ".join)
def test_remix(stack: tuple[str, ...]) -> None:
    game = remixed(game_at(GAMES[stack[0]]), *stack[1:])
    agree(game, players(game))


@pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: pair.stem)
def test_wrong_game(pair: object) -> None:
    game = pair.game("wrong")  # type: ignore[attr-defined]
    if pair.code != "C-chase":  # type: ignore[attr-defined] -- what is cut off half-way is read by nobody
        agree(game, players(game))


@pytest.mark.parametrize("rules", PATTERNS.values(), ids=PATTERNS)
def test_pattern_of_rules(rules: str) -> None:
    agree(game_in(PATTERN_GAME.format(rules=rules)), {"north": 2, "south": 3})

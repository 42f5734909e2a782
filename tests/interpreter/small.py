"""The library's games with few players and less kit, so that slow and plain ways of counting come through."""

from __future__ import annotations

from functools import cache

import library
from compose.check import Budget, StateSpace, explore
from compose.net.net import Net
from grammar.game import Game
from tests.interpreter.sheets import game_in

SLOW = (
    "ember-minute",
    "beck-gates",
    "heather-raid",
    "millrace-roll",
    "heron-and-pike",
    "cairn-keepers",
    "cloud-drift",
    "four-becks",
)
GAMES = sorted((path.stem for path in library.game_paths()), key=lambda name: (name in SLOW, name))
SMALL_SIDE, SMALL_CROWD = 2, 12
MOST_STATES = 20_000
SMALLER = {  # less kit and fewer points, so that plain Python comes through
    "beck-gates": {
        "at least 25 points": "at least 4 points",
        "  4 foam balls": "  2 foam balls",
        "  2 foam balls in each": "  1 foam ball in each",
        "  4 pegs": "  1 peg",
    },
    "cairn-keepers": {
        "  4 posts": "  2 posts",
        "8 cloth balls": "2 cloth balls",
        "4 cloth balls in each": "1 cloth ball in each",
    },
    "cloud-drift": {
        "  16 small": "  4 small",
        "8 small": "  2 small",
        "18 steps": "6 steps",
        "clouds on step 9": "clouds on step 3",
        "to step 9": "to step 3",
    },
    "crag-row": {"  3 crags": "  2 crags", "  6 foam balls": "  2 foam balls", "  3 foam balls": "  1 foam ball"},
    "four-becks": {
        "  8 foam balls": "  4 foam balls",
        "  2 foam balls in each": "  1 foam ball in each",
        "  2 pails": "  1 pail",
    },
    "heather-raid": {
        "  5 kegs": "  2 kegs",
        "at least 8 kegs": "at least 3 kegs",
        "  8 foam balls": "  2 foam balls",
        "  4 foam balls in each": "  1 foam ball in each",
    },
    "heron-and-pike": {"  3 stones": "  2 stones", "  6 foam balls": "  4 foam balls", "  3 foam": "  2 foam"},
    "millrace-roll": {"to 10 points": "to 4 points"},
    "quarry-row": {
        "  6 slates": "  2 slates",
        "  9 soft footballs": "  1 soft football",
        "  2 yarn balls": "  1 yarn ball",
    },
    "wader-ring": {
        "after 3 passes": "after 2 passes",
        "after 8 min: more": "the first side to 2 points wins\n  after 8 min: more",
    },
}


def players(game: Game) -> dict[str, int]:
    """As few players a side as still show everything, and are enough for its tasks; a crowd where each is alone."""
    crowd = len(game.sides) == 1
    tasks = {side.name: sum(role.least for role in game.roles if role.side in (None, side.name)) for side in game.sides}
    few = {name: max(SMALL_SIDE, number) for name, number in tasks.items()}
    return {side.name: SMALL_CROWD if crowd else min(few[side.name], side.most) for side in game.sides}


@cache
def small(name: str) -> Game:
    """A library game with less in it."""
    text = next(path for path in library.game_paths() if path.stem == name).read_text(encoding="utf-8")
    for before, after in SMALLER.get(name, {}).items():
        assert text.count(before) == 1, before
        text = text.replace(before, after)
    return game_in(text)


def is_countable(net: Net) -> bool:
    """Whether plain Python comes through all the states of a net."""
    space = explore(net, Budget(MOST_STATES))
    return isinstance(space, StateSpace) and space.complete

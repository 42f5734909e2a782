"""Games that nobody wrote: the interpreter and the net agree on them as well."""

from __future__ import annotations

from game_texts import Sheet
from hypothesis import assume, given
from strategies import plain_games, written

from compose.check import Budget, StateSpace, explore
from tests.interpreter.sheets import game_in, net_in
from tests.interpreter.test_same_states import agree

MOST_STATES = 800


@given(sheet=plain_games())
def test_a_random_game(sheet: Sheet) -> None:
    game = game_in(written(sheet))
    numbers = {side.name: 2 for side in game.sides}
    space = explore(net_in(game, numbers), Budget(states=MOST_STATES))
    assume(isinstance(space, StateSpace) and space.complete)
    agree(game, numbers)

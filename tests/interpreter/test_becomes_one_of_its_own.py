"""Who gives a task up may be called by their side: "the ember becomes a settler" is a player without a task again."""

from __future__ import annotations

import pytest

import library
from grammar.core.reading.from_game import core_of
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.compare import read_by_both
from tests.interpreter.sheets import game_in

CHASE = """
game Embers
space
  court 16 m by 12 m, in one piece
sides
  settlers, 4 to 30 players, each for themselves
  role ember: 1 player of settlers
play
  embers touch settlers
  embers change every {every}
when
  a settler is touched: that player becomes an ember and the ember becomes a {task}
finish
  the round ends when there are at most 3 players in, those who are left win
  after 4 min: nobody wins
"""


@pytest.mark.parametrize("task", ["settler", "player"])
def test_both_readers_come_to_the_same(task: str) -> None:
    game = game_in(CHASE.format(task=task, every="60 s"))
    ours, theirs = read_by_both(game, {"settlers": 4})
    assert ours == theirs


def test_it_is_the_same_as_a_player() -> None:
    settler, player = (core_of(game_in(CHASE.format(task=task, every="60 s"))).value for task in ("settler", "player"))
    assert settler is not None and player is not None
    assert settler.play == player.play


@pytest.mark.parametrize(("every", "refused"), [("3 min", False), ("4 min", True), ("10 min", True), ("round", False)])
def test_a_task_that_passes_on_after_the_bell_is_refused(every: str, refused: bool) -> None:
    """As is whatever else the clock would do when it has ended the round."""
    parsed = parse(CHASE.format(task="player", every=every).lstrip("\n"), "(test)").value
    assert parsed is not None
    told = [each.title for each in resolve(parsed.games[0], library.kit_categories()).findings]
    assert told == (["The clock has ended the round by then."] if refused else [])

"""Tasks that all move on through: pupils with names walk round, and the forecast says how long each has which task."""

from __future__ import annotations

from itertools import pairwise
from math import isclose

import pytest

from compose.net.duties import Duty
from tests.interpreter.moving import rows, walked
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import game_in, granted, net_in

TEXT = """
game Moving
space
  court 16 m by 9 m, halved across
sides
  north and south, {least} to 20 players each, mirrored
  role keeper: {keepers} player of each side
  role fetcher: {fetchers} players of each side
kit
  2 soft balls, like a foam ball
  2 cones for each side, like a cone
set-up
  1 soft ball in each half
  cones on the back line of their side
play
  players stay in their half
  players roll a soft ball at the cones of the other side
  fetchers do not act
  {line}
finish
  a side wins when the other side has no cones standing
  after 5 min: a draw
"""
IN_ORDER = "keepers, fetchers and players move on every 30 s"
NUMBERS = [(1, 1, 1), (1, 2, 3), (2, 2, 2), (2, 1, 6), (3, 2, 4), (1, 3, 1), (2, 5, 3)]


LINES = (IN_ORDER, "players, keepers and fetchers move on every 30 s", "all move on every 30 s")


@pytest.mark.parametrize("line", LINES)
@pytest.mark.parametrize("numbers", NUMBERS)
def test_each_has_each_task_as_long_as_is_told(line: str, numbers: tuple[int, int, int]) -> None:
    keepers, fetchers, _ = numbers
    game = game_in(TEXT.format(least=keepers + fetchers, keepers=keepers, fetchers=fetchers, line=line))
    players = dict.fromkeys(("north", "south"), sum(numbers))
    sheet = Sheet(game.sheet, granted(), players)
    begin = rows(sheet, "north")
    everybody = {pupil for _, pupils in begin for pupil in pupils}
    assert len(everybody) == sum(numbers)
    changes = 40 * len(everybody)
    seen = list(walked(begin, changes))
    for duty in net_in(game, players).duties:
        if duty.side != "north":
            continue
        having = [set(each["" if duty.task == "player" else duty.task]) for each in seen]
        assert {len(each) for each in having} == {duty.holders}
        # Where groups of other sizes move on, somebody may stay one turn longer each time, and others one less.
        unlike = 0.0 if duty.holders % duty.moving == 0 == duty.players % duty.moving else duty.moving / duty.players
        for pupil in everybody:
            share = sum(pupil in each for each in having[:changes]) / changes
            assert isclose(share, duty.holders / duty.players, abs_tol=0.03 + unlike)
        had = [set().union(*having[:turns]) for turns in range(1, len(having))]
        assert had.index(everybody) + 1 == duty.turns
        _goes_on(duty, seen)


def _goes_on(duty: Duty, seen: list[dict[str, list[str]]]) -> None:
    """Whoever leaves a task has the next one at once."""
    task, onward = ("" if each == "player" else each for each in (duty.task, duty.onward))
    for before, after in pairwise(seen):
        assert set(before[task]) - set(after[task]) <= set(after[onward])


def test_a_task_of_nobody_is_left_out_of_the_circle() -> None:
    game = game_in(TEXT.format(least=3, keepers=1, fetchers=2, line=IN_ORDER))
    duties = net_in(game, {"north": 3, "south": 3}).duties
    assert {(each.task, each.onward) for each in duties} == {("keeper", "fetcher"), ("fetcher", "keeper")}

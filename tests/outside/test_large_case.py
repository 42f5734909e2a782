"""The large case, written in the rule language: 14 against 14, 6 targets each, 8 balls, a catch returns one.

Its state count is worked out beside it: each side has 0 to 14 players in and 0 to 6 beacons standing, the
balls lie in one of 9 ways, and play stops where a side has none of either.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from tests.interpreter.sheets import game_at
from tests.outside.whole_way import Played

FILE = Path(__file__).with_name("games") / "beacon-hill.rules"


@pytest.fixture(scope="module")
def played() -> Played:
    return Played(game_at(FILE), {"north": 14, "south": 14})


def count_by_hand(players: int, targets: int, balls: int) -> tuple[int, int]:
    """States and ends, one at a time: a plain search over (players in, targets standing) of both sides and balls."""
    start = (players, targets, players, targets, (balls + 1) // 2)
    seen, ends, queue = {start}, 0, [start]
    for state in queue:
        if 0 in state[:4]:
            ends += 1
            continue
        for after in _throws(state, players, balls):
            if after not in seen:
                seen.add(after)
                queue.append(after)
    return len(seen), ends


def _throws(state: tuple[int, int, int, int, int], players: int, balls: int) -> set[tuple[int, int, int, int, int]]:
    a, s, b, t, north = state
    found = set()
    if north:  # a northern throw: misses, hits a player, knocks a target, or is caught and brings one back
        n = north - 1
        found |= {(a, s, b, t, n), (a, s, b - 1, t, n), (a, s, b, t - 1, n), (a, s, min(b + 1, players), t, n)}
    if north < balls:
        n = north + 1
        found |= {(a, s, b, t, n), (a - 1, s, b, t, n), (a, s - 1, b, t, n), (min(a + 1, players), s, b, t, n)}
    return found


def test_it_reaches_as_many_states_as_a_plain_count(played: Played) -> None:
    assert played.space.states == 90_384
    assert count_by_hand(14, 6, 8) == (90_384, int(played.space.ended().sum()))


def test_every_edge_goes_where_a_plain_count_goes_at_a_small_size() -> None:
    game = game_at(FILE)
    small = Played(game, {"north": 3, "south": 3})
    assert (small.space.states, int(np.sum(small.space.ended()))) == count_by_hand(3, 6, 8)

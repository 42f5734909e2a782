"""A line about hits that do not count is told with whom and what it is about."""

from __future__ import annotations

import pytest
from told_sheets import row, told

AT_BOTH = {"play": ("at the beacons of the other side", "at the beacons or the players of the other side")}


@pytest.mark.parametrize(("line", "said"), [
    ("a hit after a bounce does not count",
     "Hitting a player of either side or a beacon of either side after a bounce on the floor does not count."),
    ("a player hit after a bounce does not count",
     "Hitting a player of either side after a bounce on the floor does not count."),
    ("a beacon hit off the wall does not count", "Hitting a beacon of either side off the wall does not count."),
    ("a hit above the shoulder does not count", "Hitting a player of either side above the shoulder does not count."),
])  # fmt: skip
def test_of_whom_and_of_what(line: str, said: str) -> None:
    assert said in told(row(AT_BOTH, play=line))


def test_nothing_is_told_of_players_at_whom_nobody_aims() -> None:
    said = told(row(play="a hit after a bounce does not count"))
    assert "Hitting a beacon of either side after a bounce on the floor does not count." in said

"""A game of which no line names a winner loses none to its clock."""

from __future__ import annotations

import attrs
from test_findings import found, race, told

from grammar.finding import Severity


def test_a_game_that_nobody_ever_wins_lacks_no_winner() -> None:
    """Where no line names a winner the clock takes none away: the end that is out of reach is only to be known."""
    net = race({"north": 1.0, "south": 1.0}, 50, minutes=5.0)
    ends = tuple(attrs.evolve(end, winner=None, nobody=True) for end in net.ends)
    [known] = found(told(attrs.evolve(net, ends=ends)), "F-out-of-reach")
    assert known.severity is Severity.NOTE and "without a winner" not in known.title

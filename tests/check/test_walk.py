"""Lines of play carried out move by move: every witness leads where it says, and an impossible move is refused."""

from __future__ import annotations

import pytest

from compose.check import check
from compose.check.walk import walk
from compose.net.net import Net
from tests.benchmarks.lantern_net import lantern_row
from tests.check.cases import hold_the_balls, last_targets, lost_balls, one_ball_duel, race, rally

GAMES = {
    "dead end": one_ball_duel(balls_must_go_too=True),
    "loop": rally(way_out=False),
    "two winners": last_targets(tie_rule=False),
    "stall": hold_the_balls(hold_limit=False, clock=True),
    "stranded": lost_balls(fetched=False),
}


@pytest.mark.parametrize("net", GAMES.values(), ids=GAMES.keys())
def test_witnesses_lead_where_they_say(net: Net) -> None:
    shown = [finding for finding in check(net).findings if finding.witness]
    assert shown
    for finding in shown:
        moves = [step.transition for step in finding.witness[1:]]
        markings = walk(net, moves)
        assert len(markings) == len(finding.witness)
        assert markings == tuple(step.marking for step in finding.witness)
        if finding.loop:
            round_trip = walk(net, moves + [step.transition for step in finding.loop])
            assert round_trip[-1] == markings[-1]


def test_a_move_that_cannot_be_made_is_refused() -> None:
    net = race(to=3, capacity=3)
    assert walk(net, ()) == (net.start(),)
    with pytest.raises(ValueError, match="cannot be made"):
        walk(lantern_row(1, 1, 1), (6,))

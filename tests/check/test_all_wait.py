"""All sides wait for one another only where whoever plays on alone can win nothing by it."""

from __future__ import annotations

import pytest

from compose.check.check import check
from compose.telling.english.findings import findings_told
from grammar.finding import Severity
from tests.net.sheet_pieces import KIT, SET_UP, net

ROLL = "players roll a soft ball past the back line of the other side"
LOSES = "a side loses when it has no soft balls in its half"
AT_CONES = "players roll a soft ball at the cones of the other side"
KNOCKED = "a side wins when the other side has 1 cone down"
NOTHING = '"Whoever is last to sit down begins."'


def told(play: str = ROLL, finish: str = LOSES) -> list[tuple[Severity, str]]:
    """How grave it is that all wait, and in which words."""
    kit, set_up = KIT.replace("2 soft", "4 soft"), SET_UP.replace("1 soft ball", "2 soft balls")
    of = net(NOTHING, play, finish, kit=kit, set_up=set_up)
    found = findings_told(check(of).findings, of)
    return [(each.severity, each.title) for each in found if each.title.startswith("All sides can wait")]


def test_who_has_lost_with_the_last_ball_rolls_none_away() -> None:
    title = "All sides can wait for one another for ever: whoever plays on alone can win nothing by it."
    assert told() == [(Severity.WARNING, title)]


def test_until_a_bell_that_gives_nobody_the_win_it_is_only_to_know() -> None:
    title = "All sides can wait for one another until the bell: whoever plays on alone can win nothing by it."
    assert told(finish=f"{LOSES}\n  after 5 min: a draw") == [(Severity.NOTE, title)]


@pytest.mark.parametrize(
    ("play", "finish"),
    [
        (f"{ROLL}\n  a soft ball is held at most 10 s", LOSES),  # they may not keep it
        (ROLL, LOSES.replace("loses", "wins")),  # who rolls alone wins
        (f"{ROLL}\n  {AT_CONES}", f"{LOSES}\n  {KNOCKED}"),  # who rolls alone may win
    ],
)
def test_whoever_gains_by_playing_on_does_not_wait(play: str, finish: str) -> None:
    assert told(play, finish) == []


def test_a_side_that_holds_the_round_up_by_itself_is_told_alone() -> None:
    assert told(ROLL.replace("players", "players of north", 1)) == []

"""Of two players named in a sentence "their side" could be either's; and what a narrower line takes out is said."""

from __future__ import annotations

import pytest
from told_games import ALONE
from told_sheets import row, told

THROW = "overarm throw a foam ball at the beacons of the other side"
AT_PLAYERS = (THROW, "overarm throw a foam ball at the players of the other side")
SCORES = "and the thrower's side scores 1 point"
DOER = "the side of whoever did so"
SAID = {
    "points for a hit": (
        row({"play": AT_PLAYERS}, when=f"a player is hit: that player is out {SCORES}"),
        [f"the player hit is out for the rest of the round and {DOER} scores 1 point."],
        ["their side scores"],
    ),
    "a hit that wins at once": (
        row({"play": AT_PLAYERS}, when="a player is hit: the thrower's side wins"),
        [f"When a player of a side hits a player of the other side, {DOER} wins."],
        ["their side wins"],
    ),
    "a hit and the ball": (
        row({"play": AT_PLAYERS}, when="a player is hit: the ball goes to the thrower's half"),
        [f"the ball goes to the half of {DOER}."],
        ["goes to their half"],
    ),
    "points for a beacon": (
        row({"when": ("it stays down", f"it stays down {SCORES}")}),
        ["the beacon stays down and their side scores 1 point."],
        [DOER],
    ),
    "each for themselves": (
        ALONE.replace("that player is out", "the thrower's side scores 1 point"),
        ["When a badger hits another badger, whoever did so scores 1 point."],
        ["the badgers score"],
    ),
    "some of them otherwise": (
        row(
            {"play": AT_PLAYERS, "sides": ("mirrored", "mirrored\n  role king: 1 player of each side")},
            when="a player is hit: that player is out\n  a king is hit: play goes on",
        ),
        ["the player hit is out for the rest of the round, unless this comes first: “a king is hit: play goes on”."],
        [],
    ),
}


@pytest.mark.parametrize(("sheet", "said", "unsaid"), SAID.values(), ids=SAID)
def test_whose_points_they_are_is_said(sheet: str, said: list[str], unsaid: list[str]) -> None:
    text = told(sheet)
    assert [each for each in said if each not in text] == []
    assert [each for each in unsaid if each in text] == []


def test_whoever_plays_alone_aims_at_what_others_have() -> None:
    """Their own they leave alone, and "their cones" would be those."""
    sheet = ALONE.replace("3 foam balls\n", "3 foam balls\n  1 cone for each player\n", 1)
    sheet = sheet.replace("foam balls on the court\n", "foam balls on the court\n  cones on the court\n")
    sheet = sheet.replace("play\n", "play\n  badgers roll a foam ball at the cones\n", 1)
    text = told(sheet.replace("when\n", "when\n  a cone is knocked: its side loses 1 point and it stands up again\n"))
    assert "The badgers may roll a foam ball at the cones of other badgers." in text
    assert "When a badger knocks a cone of another badger, its owner loses 1 point" in text
    assert "their cones" not in text

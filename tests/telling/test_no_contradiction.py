"""What is understood contradicts nothing that it says besides, and names whom it means."""

from __future__ import annotations

import pytest
from told_sheets import row, told

from compose.telling.wording import wording_of

SWAP = "a pass is caught on the loft bench: the passer changes places with the catcher"
LOFT = {
    "space": "loft bench: behind each back line",
    "sides": "role piper: 1 player of each side",
    "set_up": "1 piper of each side on the loft bench",
    "play": "players pass a foam ball to a team-mate on the loft bench\npipers do not act",
}
HIT = "players overarm throw a foam ball at the players of the other side"


@pytest.mark.parametrize(
    ("sheet", "must", "must_not"),
    [
        (row(when=SWAP, **LOFT), "change places and tasks", "comes back from"),
        (
            row(play=HIT, space="loft bench: behind each back line",
                when="a player is hit: that player goes to the loft bench of the other side\n"
                     "a ball is caught: the thrower goes to the loft bench of the other side"),
            "the loft bench of the side of whoever did so",
            "bench of that side",
        ),
        (
            row(play=HIT, space="loft bench: behind each back line",
                when="a ball is caught: the thrower goes to the loft bench of the other side"),
            "whoever sent it goes to the loft bench",
            "whoever did so",
        ),
        (
            row(when="a ball is missed: the other side scores 1 point\n"
                     "a ball leaves the court: the other side scores 1 point"),
            "misses, but stays on the court",
            "misses, the other",
        ),
        (row(play='"Nobody shouts."\n' + HIT, space="loft bench: behind each back line",
             when="a player is hit: that player goes to the loft bench"),
         "By what is read, nobody comes back from", "\nNobody comes back"),
    ],
)  # fmt: skip
def test_understood(sheet: str, must: str, must_not: str) -> None:
    said = told(sheet)
    assert must in said and must_not not in said, said
    assert told(sheet, wording_of("fr")) != said

"""Who is ahead when more of their own things are down is told of: hardly anybody means the side that was hit more."""

from __future__ import annotations

import pytest

from compose.net.from_game import net_of
from tests.interpreter.sheets import game_in, granted
from tests.net.sheet_pieces import KIT, SET_UP, SPACE

AT_OTHERS = "players roll a soft ball at the cones of the other side"
AT_OWN = "players roll a soft ball at the cones of their side"


@pytest.mark.parametrize(
    ("play", "result", "warned"),
    [
        (AT_OTHERS, "more cones down wins", True),
        (AT_OTHERS, "fewer cones down wins", False),
        (AT_OTHERS, "more cones standing wins", False),
        (AT_OWN, "more cones down wins", False),
    ],
)
def test_more_of_their_own_down(play: str, result: str, warned: bool) -> None:
    sides = "north and south, 3 to 9 players each"
    sections = {"space": SPACE, "sides": sides, "kit": KIT, "set-up": SET_UP, "play": play}
    sections["finish"] = f"after 5 min: {result}, else a draw"
    text = "game Down\n  ages 8 to 12\n" + "".join(f"{name}\n  {said}\n" for name, said in sections.items())
    found = net_of(game_in(text), granted(), {"north": 3, "south": 3}).findings
    lines = [text.splitlines().index(f"  {sections['finish']}") + 1] if warned else []
    assert [each.place.line for each in found if each.code == "N-own-down"] == lines

"""Balls that do not go evenly into the places of the sides are told, with who gets how many: it is no fair start."""

from __future__ import annotations

import pytest

import library
from compose.net.from_game import net_of
from compose.staging.school_class import some_class
from compose.staging.staging import stage
from compose.telling.for_class import odd_ball_lines
from tests.interpreter.sheets import game_in, granted
from tests.net.sheet_pieces import FINISH, KIT, SPACE, THROW

TARGETS = "cones on the back line of their side"


def told(balls: int, set_up: str) -> list[str]:
    """What the check says of so many soft balls that lie so; the card says who gets how many, too."""
    kit = KIT.replace("2 soft balls", f"{balls} soft balls")
    sections = {"space": SPACE, "sides": "north and south, 3 to 9 players each", "kit": kit}
    sections |= {"set-up": f"{TARGETS}\n  {set_up}", "play": THROW, "finish": FINISH}
    lines = (f"{name}\n  {said}\n" for name, said in sections.items())
    game = game_in("game Uneven\n  ages 8 to 12\n" + "".join(lines))
    found = net_of(game, granted(), {"north": 3, "south": 3}).findings
    said = [each.title for each in found if each.code == "N-uneven"]
    card = list(odd_ball_lines(stage(game, library.norms(), library.kit_names(), some_class(6))))
    assert [each.partition(": ")[2] for each in card] == [each.partition(": ")[2] for each in said]
    return said


@pytest.mark.parametrize("balls", range(2, 9))
def test_an_odd_number_shared_out_is_told(balls: int) -> None:
    more, less = -(-balls // 2), balls // 2
    wanted = [f"The {balls} soft balls cannot be shared evenly: {more} for north and {less} for south."]
    assert told(balls, "soft balls in each half") == (wanted if balls % 2 else [])


def test_one_that_lies_where_both_come_to_it_is_no_advantage() -> None:
    assert told(5, "2 soft balls in each half\n  1 soft ball in the middle") == []
    assert told(5, "soft balls in the middle") == []

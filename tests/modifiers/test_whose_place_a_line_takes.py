"""A line of a modifier takes the place of one about the same or about less: of what is counted, too."""

from __future__ import annotations

import pytest

from compose.modifiers.changes.events import covers_rule
from grammar.parse import parse_line
from grammar.sentences.base import Node
from tests.grammar.test_values_of_the_core import SIDES
from tests.interpreter.sheets import game_in

GAME = SIDES.replace("2 cones for each side", "2 cones for each side\n  2 posts for each side, like a cone").replace(
    "  cones on", "  posts on the back line of their side\n  cones on"
)
TARGETS, CONES = "a side has no targets standing", "a side has no cones standing"


def when(event: str) -> Node:
    sentence = parse_line("when", f"{event}: that side loses 1 point").value
    assert sentence is not None
    return sentence


@pytest.mark.parametrize(
    ("general", "particular", "covers"),
    [
        (CONES, CONES, True),
        (TARGETS, CONES, True),
        (CONES, TARGETS, False),
        (TARGETS, "a side has at most 1 cone standing", False),
        (TARGETS, "a side has no players in", False),
        (TARGETS, "a side has 2 points", False),
        ("a side has 2 points", TARGETS, False),
        (TARGETS, "a side has more cones standing than the other side", False),
    ],
)
def test_what_counts_all_takes_the_place_of_what_counts_some(general: str, particular: str, covers: bool) -> None:
    game = game_in(GAME.format(knocked="it stays down", finish=""))
    assert covers_rule(game, when(general), when(particular)) == covers

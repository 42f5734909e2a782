"""How two games differ, in the words of a teacher: players, kit, space, play, finish, care.

Works for a remix and its base as well as for any two games of the library.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from compose.modifiers.difference.kit import kit_differences
from compose.modifiers.difference.lines import line_differences
from compose.modifiers.difference.order import (
    end_order_differences,
    idle_order_differences,
    rule_order_differences,
)
from compose.modifiers.difference.people import people_differences
from compose.modifiers.difference.same_game import same_game
from compose.modifiers.difference.skills import skill_differences
from compose.modifiers.difference.space import space_differences
from compose.modifiers.difference.told import told_differences
from grammar.frozen import frozen
from grammar.game import Game


@frozen
class Difference:
    """One thing that differs, under a heading of PARTS, as a sentence without its full stop."""

    heading: str
    words: str


PARTS: tuple[tuple[str, Callable[[Game, Game], Iterator[str]]], ...] = (
    ("players", people_differences),
    ("kit", kit_differences),
    ("space", space_differences),
    ("skills", skill_differences),
    ("skills", told_differences),
    ("play", partial(line_differences, section="play")),
    ("what follows", partial(line_differences, section="when")),
    ("what follows", rule_order_differences),
    ("finish", partial(line_differences, section="finish")),
    ("finish", end_order_differences),
    ("care", partial(line_differences, section="care")),
)


def differences(one: Game, other: Game) -> tuple[Difference, ...]:
    """What the other game changes, going by the one; where they say the same, no more than an order without effect."""
    idle = tuple(Difference("what follows", words) for words in idle_order_differences(one, other))
    if same_game(one, other):
        return idle
    told = tuple(Difference(heading, words) for heading, part in PARTS for words in part(one, other))
    return (*told, *idle) or (Difference("play", "the same lines in another order, and their order counts"),)

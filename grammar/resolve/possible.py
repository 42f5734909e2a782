"""Mistakes of meaning that need no play to be seen: one function for each, all in CHECKS.

Each takes a game whose names are all known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from grammar.finding import Finding
from grammar.game import Game
from grammar.resolve.possible_counts import chances, halves, nothing_at_all, one_of_each, ranges, whole_numbers
from grammar.resolve.possible_places import areas_in_a_circle, forbidden_places, kept_from_acting, said_twice
from grammar.resolve.possible_rules import (
    catcher_needs_catch,
    claims,
    contradictions,
    named_sides,
    odd_names,
    switches,
    tracks,
)
from grammar.resolve.possible_set_up import placed_kit

CHECKS: tuple[Callable[[Game], Iterator[Finding]], ...] = (
    one_of_each,
    ranges,
    chances,
    whole_numbers,
    nothing_at_all,
    halves,
    placed_kit,
    contradictions,
    catcher_needs_catch,
    claims,
    named_sides,
    switches,
    tracks,
    odd_names,
    areas_in_a_circle,
    forbidden_places,
    kept_from_acting,
    said_twice,
)


def possible_findings(game: Game) -> Iterator[Finding]:
    """All mistakes of meaning of a game."""
    for check in CHECKS:
        yield from check(game)

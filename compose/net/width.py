"""How wide a rule set is: the work of taking it apart grows with sides, kit and attempts together."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.finding import Finding, Severity
from grammar.game import Game
from grammar.sentences.play import Attempt

MOST_COMBINATIONS = 400  # assumption: the widest game of the library has 32; 400 still take under a minute


def combinations(game: Game) -> int:
    """Who may try what with which thing: sides times kit lines times attempts."""
    return len(game.sides) * len(game.kit) * sum(1 for _ in game.all_of("play", Attempt))


def too_wide(game: Game) -> Iterator[Finding]:
    """A finding where the rules are too many to be taken apart in a sensible time."""
    number = combinations(game)
    if number > MOST_COMBINATIONS:
        title = f"This game has {number} combinations of sides, kit and attempts; at most {MOST_COMBINATIONS} are read."
        hint = "Leave out kit lines or attempts that do not matter, or write it as two games."
        yield Finding("N-too-wide", Severity.ERROR, title, game.sheet.span, hint)

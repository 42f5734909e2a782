"""How wide a rule set is: the work of taking it apart grows with sides, kit and attempts together."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.finding import Finding, Severity

MOST_COMBINATIONS = 600  # assumption: the widest game of the library has 12; 600 still take under a minute


def combinations(core: Core) -> int:
    """Who may try what with which ball: each attempt of each population, at each thing."""
    return len(core.play.attempts)


def too_wide(core: Core) -> Iterator[Finding]:
    """A finding where the rules are too many to be taken apart in a sensible time."""
    number = combinations(core)
    if number > MOST_COMBINATIONS:
        title = f"This game has {number} combinations of players, balls and aims; at most {MOST_COMBINATIONS} are read."
        hint = "Leave out kit lines or attempts that do not matter, or write it as two games."
        place = core.lines[core.play.offers[0].lines[0]].span
        yield Finding("N-too-wide", Severity.ERROR, title, place, hint)

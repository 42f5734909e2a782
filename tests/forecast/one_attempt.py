"""A net of nothing but one attempt, and what the library's norms say of it."""

from __future__ import annotations

import library
from compose.forecast.chances.chances import Explanation, explain_chances
from compose.net.attempt import Attempt
from compose.net.net import All, Net, Rate, Rule, Transition
from compose.staging.norms import Level
from grammar.span import Span
from tests.check.worded import worded

RULE = Rule("players overarm throw a foam ball at the lanterns", Span("row.rules", 12, 3, 50))
THROW = Attempt("throw at a pin", "overarm throw", "foam ball", "target", "bowling pin", distance_m=6.0)
ALL = ("success", "caught", "missed")


def net_of(attempt: Attempt, outcomes: tuple[str, ...] = ALL) -> Net:
    """A net of nothing but one attempt and its outcomes."""
    moves = tuple(
        Transition(worded(f"{attempt.name}: {outcome}"), "north", False, attempt, outcome, Rate(), All(), (), (RULE,))
        for outcome in outcomes
    )
    return Net("one attempt", ("north",), (), moves, (), (), None, (RULE,))


def told(attempt: Attempt, outcomes: tuple[str, ...] = ALL, level: Level = "usual") -> Explanation:
    """The explanation of one attempt with the library's norms and kit."""
    return explain_chances(net_of(attempt, outcomes), library.norms(), library.kit_names(), level)[attempt]

"""The first set: what is proved of a staged game."""

from __future__ import annotations

from compose.answer.answer import Answer
from compose.answer.staged import Staged
from compose.check import Budget, check
from compose.check.space import USUAL


def proved(game: Staged, budget: Budget = USUAL) -> Answer:
    """What the check proves within the budget, with what was said on the way."""
    result = check(game.net, budget, game.turned)
    return Answer(game, (*game.findings, *result.findings), result.facts, result.space)

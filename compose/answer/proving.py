"""The first set: what is proved of a staged game."""

from __future__ import annotations

from compose.answer.answer import Answer, with_new
from compose.answer.staged import Staged
from compose.answer.switching import switched
from compose.check import Budget, check
from compose.check.space import USUAL
from compose.telling.english.findings import findings_told


def proved(game: Staged, budget: Budget = USUAL) -> Answer:
    """What the check proves within the budget, with what was said on the way, of every kind of court."""
    result = check(game.net, budget, game.turned)
    others = tuple(proved(each, budget) for each in game.others)
    findings = (*game.findings, *findings_told(result.findings, game.net))
    findings = (*findings, *switched(game, findings, budget))
    more = (finding for other in others for finding in other.proved)
    return Answer(game, with_new(findings, more), result.facts, result.space, others=others)

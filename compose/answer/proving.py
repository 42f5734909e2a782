"""The first set: what is proved of a staged game."""

from __future__ import annotations

from compose.answer.answer import Answer, with_new
from compose.answer.of_one_cause import of_one_cause
from compose.answer.staged import Staged
from compose.answer.switching import switched
from compose.check import Budget, check
from compose.check.space import USUAL
from grammar.frozen import evolve


def proved(game: Staged, budget: Budget = USUAL) -> Answer:
    """What the check proves within the budget, with what was said on the way, of every kind of court; and what is to
    mend with a switch turned over."""
    return with_switches(proved_as_it_stands(game, budget), budget)


def proved_as_it_stands(game: Staged, budget: Budget = USUAL) -> Answer:
    """The same with every switch as the sheet has it: whether it is sound does not hang on the others."""
    result = check(game.net, budget, game.turned)
    others = tuple(proved_as_it_stands(each, budget) for each in game.others)
    findings = of_one_cause(game.findings, result.findings, game.net)
    more = (finding for other in others for finding in other.proved)
    return Answer(game, with_new(findings, more), result.facts, result.space, others=others)


def with_switches(answer: Answer, budget: Budget = USUAL) -> Answer:
    """An answer with a note for each switch with which something is to mend; each is a game of its own to check."""
    return evolve(answer, proved=(*answer.proved, *switched(answer.staged, answer.proved, budget)))

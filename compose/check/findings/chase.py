"""Reactions chase each other: what follows at once from one move never settles.

"When there are none, put one in; when there is one, take it out": a referee who obeys would never
stop. Found where more rounds of reactions follow a single move than `reactions.ROUNDS`.
"""

from __future__ import annotations

from compose.check.found import Found
from compose.check.reactions import ROUNDS
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import Chain, said

CODE = "C-chase"


def chase(study: Study) -> list[Found]:
    """The nearest move after which the reactions do not settle."""
    chases = study.space.chases
    if not chases:
        return []
    state, move = min(chases)
    transition = study.net.transitions[move]
    rules = [rule for reaction in study.net.reactions for rule in reaction.rules]
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said('After "{move}" what follows at once sets itself off for ever.', move=transition),
            place=(rules or list(transition.rules))[0].span,
            hint=said(
                "After {rounds} rounds it is cut off. Change one of: {reactions}.",
                rounds=ROUNDS,
                reactions=Chain(study.net.reactions, "; "),
            ),
            others=tuple(dict.fromkeys(rule.span for rule in rules[1:])),
            witness=line_of_play(study.space, state),
            numbers=(("moves concerned", float(len(chases))),),
        )
    ]

"""Reactions chase each other: what follows at once from one move never settles.

"When there are none, put one in; when there is one, take it out": a referee who obeys would never
stop. Found where more rounds of reactions follow a single move than `reactions.ROUNDS`.
"""

from __future__ import annotations

from compose.check.reactions import ROUNDS
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Basis, Finding, Severity

CODE = "C-chase"


def chase(study: Study) -> list[Finding]:
    """The nearest move after which the reactions do not settle."""
    chases = study.space.chases
    if not chases:
        return []
    state, move = min(chases)
    transition = study.net.transitions[move]
    told = [reaction.words for reaction in study.net.reactions]
    rules = [rule for reaction in study.net.reactions for rule in reaction.rules]
    return [
        Finding(
            code=CODE,
            severity=Severity.WARNING,
            title=f'After "{transition.words}" what follows at once sets itself off for ever.',
            place=(rules or list(transition.rules))[0].span,
            hint=f"After {ROUNDS} rounds it is cut off. Change one of: {'; '.join(told)}.",
            others=tuple(dict.fromkeys(rule.span for rule in rules[1:])),
            basis=Basis.PROVED,
            witness=line_of_play(study.space, state),
            numbers=(("moves concerned", float(len(chases))),),
        )
    ]

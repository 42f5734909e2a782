"""Unwinnable: a side that no line of play lets win, though the game is one that somebody wins.

The negation of weak winnability (Game Description Language specification, Stanford Logic Group
LG-2006-01, 2008): for every side some sequence of everybody's moves reaches an end that it wins.
"""

from __future__ import annotations

from compose.check.never import why_never
from compose.check.study import Study
from compose.check.words import sentence, subject
from grammar.finding import Basis, Finding, Severity
from grammar.span import nowhere

CODE = "C-unwinnable"


def unwinnable(study: Study) -> list[Finding]:
    """One finding for each side that cannot win, unless nobody is ever said to win."""
    if not study.contested or not (study.ended.any() or study.net.bell is not None):
        return []
    return [_finding(study, side) for side in study.net.sides if not study.can_win(side)[0]]


def _finding(study: Study, side: str) -> Finding:
    net = study.net
    own = [end for end in net.ends if end.winner == side]
    own += [end for end in net.bell.results if end.winner == side] if net.bell is not None else []
    winning = [end for end in net.ends if end.winner is not None]
    shown = own or winning or list(net.ends)
    if own:
        reasons = "; ".join(f'"{end.words}" never comes: {why_never(study, end.guard)}' for end in own)
        hint = f"{reasons}. Let play come to that, or ask for less there."
    else:
        hint = f'No sentence lets {subject(side)} win; add one to the finish: "... wins when ..."'
    return Finding(
        code=CODE,
        severity=Severity.WARNING,
        title=sentence(f"{subject(side)} can never win, whatever happens in play."),
        place=shown[0].rule.span if shown else nowhere(),
        hint=hint,
        basis=Basis.PROVED,
        numbers=(("states", float(study.space.states)),),
    )

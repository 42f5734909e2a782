"""Unwinnable: a side that no line of play lets win, though the game is one that somebody wins.

The negation of weak winnability (Game Description Language specification, Stanford Logic Group
LG-2006-01, 2008): for every side some sequence of everybody's moves reaches an end that it wins. Over two halves
this is asked of the groups, each of which may play either side.
"""

from __future__ import annotations

from compose.check.match import can_win, decides
from compose.check.never import why_never
from compose.check.study import Study
from compose.check.words import sentence, subject
from grammar.finding import Basis, Finding, Severity
from grammar.span import nowhere

CODE = "C-unwinnable"


def unwinnable(study: Study) -> list[Finding]:
    """One finding for each side that cannot win, unless nobody is ever said to win."""
    if not decides(study.net) or not (study.ended.any() or study.net.bell is not None):
        return []
    lost = [side for side in study.net.sides if side not in can_win(study)]
    if study.net.match.halves:
        return [_over_halves(study, lost)] if lost and _whole(study) else []
    return [_finding(study, side) for side in lost]


def _whole(study: Study) -> bool:
    """Whether the other half was looked at to its end, too."""
    return study.turned is None or study.turned.space.complete


def _over_halves(study: Study, lost: list[str]) -> Finding:
    """Two halves are a game of their own: groups that always come out level, or one that never comes out ahead."""
    title = f"whoever begins as {subject(lost[0])} can never win over both halves, whatever happens in play."
    if len(lost) > 1:
        title = "Nobody can ever win over both halves: whatever happens in play, they come out level."
    return Finding(
        code=CODE,
        severity=Severity.WARNING,
        title=sentence(title),
        place=study.net.match.place,
        hint="The points of both halves count together: let something that can happen in play give some.",
        basis=Basis.PROVED,
        numbers=(("states", float(study.space.states)),),
    )


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

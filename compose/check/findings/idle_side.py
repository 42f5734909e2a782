"""Idle side: one whose players may try something by a line of the sheet, and never can, in no line of play.

Others act by the same line, so that it is not idle; these stand about for the whole round. Where the side can for
that reason never win either, that is told instead.
"""

from __future__ import annotations

from compose.check.findings.unwinnable import unwinnable_sides
from compose.check.found import Found, Sides
from compose.check.match import decides
from compose.check.never import why_not_fired
from compose.check.seen import everywhere
from compose.check.study import Study
from compose.net.net import Transition
from grammar.finding import IDLE, Severity
from grammar.said import Capital, Chain, said

NO_ACT = ("fetch", "free", "hold", "foul")  # none of these is what a line lets somebody try


def idle_side(study: Study) -> list[Found]:
    """One finding for each such side, unless nobody can do anything."""
    lost = unwinnable_sides(study) if decides(study.net) else []
    idle = [side for side in study.net.sides if side not in lost and _stands_about(study, side)]
    return [] if len(idle) == len(study.net.sides) else [_finding(study, side) for side in idle]


def _tried(study: Study, side: str) -> list[tuple[Transition, bool]]:
    acts = zip(study.net.transitions, study.space.happened, strict=True)
    return [(act, done.fired) for act, done in acts if act.side == side and act.attempt.skill not in NO_ACT]


def _stands_about(study: Study, side: str) -> bool:
    tried = _tried(study, side)
    return bool(tried) and not any(fired for _, fired in tried)


def _finding(study: Study, side: str) -> Found:
    act = _tried(study, side)[0][0]
    why = why_not_fired(everywhere(study), act)
    title = "{side} can never try anything: {line} never takes effect for them."
    mend = "Let them come by what they need, or say in that line of whom it is."
    return Found(
        code=IDLE,
        severity=Severity.WARNING,
        title=said(title, side=Sides(side), line=act.rules[0]),
        place=act.rules[0].span,
        hint=Chain((said("{why}.", why=Capital(why.told)), mend)),
        others=why.lines,
        of_one_side=True,
        numbers=(("states", float(study.space.states)),),
    )

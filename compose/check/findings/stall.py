"""Stall: a side that stops acting of its own will keeps the round from ending.

The hold-out set of a side: the states from which no end can be reached along moves that are not that
side's to refuse (the other sides', the forced, the clock's). It is what an attractor computation for
"everybody but this side" leaves over (C. Baier and J.-P. Katoen, Principles of Model Checking, 2008,
ch. 7 and 10, on backward reachability), here for races instead of turns. States from which no end
can be reached at all are dead ends or loops and are told there.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.check.graph import can_reach
from compose.check.pointing import percent
from compose.check.study import Study
from compose.check.witness import line_of_play
from compose.net.net import Transition
from grammar.finding import Basis, Finding, Severity
from grammar.span import Span, nowhere

CODE = "C-stall"


def stall(study: Study) -> list[Finding]:
    """One finding for each side that can hold the round up; alike mirrored sides share one."""
    if len(study.net.sides) < 2 or not study.ended.any():
        return []
    held = {side: hold_out(study, side) for side in study.net.sides}
    stalling = [side for side in study.net.sides if held[side].any()]
    twins = [side for side in stalling if side in study.net.mirrored]
    if len(twins) > 1:
        stalling = [side for side in stalling if side not in twins[1:]]
    return [_finding(study, side, held[side], twins if side in twins else [side]) for side in stalling]


def hold_out(study: Study, side: str) -> Bools:
    """The states in which play can still end, but not unless this side acts of its own will."""
    refusable = np.array([_refusable(t, side) for t in study.net.transitions], dtype=np.bool_)
    if not refusable.any():
        return np.zeros(study.space.states, dtype=np.bool_)
    without = ~refusable[study.space.transitions]
    return study.can_end & ~can_reach(study.space, study.back, study.ended, without)


def _refusable(transition: Transition, side: str) -> bool:
    return transition.side == side and not transition.forced


def _finding(study: Study, side: str, held: Bools, sides: list[str]) -> Finding:
    profits = np.flatnonzero(held & study.ahead(side))
    state = int(profits[0] if profits.size else np.flatnonzero(held)[0])
    who = side if len(sides) == 1 else f"{side} (and likewise {', '.join(sides[1:])})"
    clock = " before the bell" if study.net.bell is not None else ""
    gain = " and win by it at the bell" if profits.size else ""
    return Finding(
        code=CODE,
        severity=Severity.WARNING if study.net.bell is None else Severity.NOTE,
        title=f"{who} can keep the round from ending{clock}{gain}, just by not playing on.",
        place=_sentence(study, side),
        hint=f"So it is in {percent(int(held.sum()), study.space.states)} of all situations. " + _mend(study, side),
        basis=Basis.PROVED,
        witness=line_of_play(study.space, state),
        numbers=_numbers(held, profits),
    )


def _numbers(held: Bools, profits: NDArray[np.int64]) -> tuple[tuple[str, float], ...]:
    return (("situations", float(held.sum())), ("of them ahead at the bell", float(profits.size)))


def _sentence(study: Study, side: str) -> Span:
    """The sentence of the first thing that the side may leave undone."""
    for transition in study.net.transitions:
        if _refusable(transition, side) and transition.rules:
            return transition.rules[0].span
    return nowhere()


def _mend(study: Study, side: str) -> str:
    needed = {
        study.net.places[place].token
        for transition in study.net.transitions
        if _refusable(transition, side)
        for limit in transition.rate.limits
        for place in limit
    }
    if "ball" in needed:
        return 'Give a hold limit: "a ball is held at most 10 s".'
    return f"Make {side} act within a time, or let the others act without waiting for it."

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
from compose.check.forcing import can_force
from compose.check.pointing import how_many_like_this, told_as_one
from compose.check.study import Study
from compose.check.witness import line_of_play
from compose.check.words import likewise, sentence, subject
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
    return [_finding(study, sides[0], held[sides[0]], sides) for sides in told_as_one(study.net, stalling)]


def hold_out(study: Study, side: str) -> Bools:
    """The states in which play can still end, but not unless this side acts of its own will."""
    refusable = _refusable_moves(study, side)
    if not refusable.any():
        return np.zeros(study.space.states, dtype=np.bool_)
    without = ~refusable[study.space.transitions]
    return study.can_end & ~study.reaching(study.ended, without)


def _refusable_moves(study: Study, side: str) -> Bools:
    return np.array([_refusable(t, side) for t in study.net.transitions], dtype=np.bool_)


def _refusable(transition: Transition, side: str) -> bool:
    return transition.side == side and not transition.forced


def _finding(study: Study, side: str, held: Bools, sides: list[str]) -> Finding:
    profits = np.flatnonzero(held & study.ahead(side))
    state = int(profits[0] if profits.size else np.flatnonzero(held)[0])
    clock = " before the bell" if study.net.bell is not None else ""
    gain = " and win by it at the bell" if profits.size else ""
    forced = bool(can_force(study, _refusable_moves(study, side), held)[0])
    common = how_many_like_this(int(held.sum()), study.space.states)
    return Finding(
        code=CODE,
        severity=Severity.WARNING if study.net.bell is None else Severity.NOTE,
        title=sentence(
            f"{subject(side)}{likewise(sides[1:])} can keep the round from ending{clock}{gain}, just by not playing on."
        ),
        place=_sentence(study, side),
        hint=f"{_how(side, bool(held[0]), forced)} {common} {_mend(study, side)}",
        basis=Basis.PROVED,
        witness=line_of_play(study.space, state),
        numbers=(*_numbers(held, profits), ("can be forced from the start", float(forced))),
    )


def _how(side: str, from_the_start: bool, forced: bool) -> str:
    """Whether the side only can come there, or can see to it that play comes there."""
    if from_the_start:
        return "It is so from the start."
    if forced:
        return sentence(f"{subject(side)} can bring that about, whatever the others do.")
    return "It takes some luck, or the others' help, to come there."


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
    return f"Make {subject(side)} act within a time, or let the others act without waiting."

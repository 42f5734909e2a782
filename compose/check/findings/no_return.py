"""Point of no return: from here a side can no longer win, though the round is far from over.

Its pupils play on for nothing. Told only where the side could win at the start, where an end can
still be reached, and where at least half the moves of the shortest round are still to come.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from compose.check.found import Found, Sides
from compose.check.graph import Longs
from compose.check.left_alone import left_alone, stuck_alone
from compose.check.pointing import how_many_like_this, span_of_last_move, told_as_one
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import Chain, said

CODE = "C-no-return"


def no_return(study: Study) -> list[Found]:
    """One finding for each side that can lose its chance long before the end; mirrored sides are told as one."""
    if not study.contested:
        return []
    lost = {side: _lost(study, side) for side in study.net.sides}
    losing = [side for side in study.net.sides if lost[side].size]
    return [_finding(study, lost, sides) for sides in told_as_one(study.net, losing)]


def _lost(study: Study, side: str) -> Longs:
    """The states, far from the end, in which a side that could win at the start no longer can."""
    can_win = study.can_win(side)
    if not can_win[0]:
        return np.zeros(0, dtype=np.int64)
    lost = ~can_win & study.far_from_over
    if study.past_counting.any():
        lost &= ~study.reaching(study.past_counting)
    return np.flatnonzero(lost)


def _kept_once_alone(study: Study, side: str) -> bool:
    """Whether it kept its chance, if it won where play gets stuck because it is left alone."""
    if not stuck_alone(study):
        return False
    winning = study.reaching(study.won(side) | left_alone(study, side))
    return bool(winning[_lost(study, side)].all())


def _finding(study: Study, lost: Mapping[str, Longs], sides: list[str]) -> Found:
    side = sides[0]
    state = int(lost[side][0])
    left = min(int(study.to_end[lost[each][0]]) for each in sides)
    match = study.net.match
    what = "win" if match.one_round else said("win {part}", part=match)
    return Found(
        code=CODE,
        severity=Severity.NOTE,
        title=said(
            "{side} can lose every chance to {what} while at least {left} moves are still to be played.",
            side=Sides(side, tuple(sides[1:])),
            what=what,
            left=left,
        ),
        place=span_of_last_move(study, state),
        hint=Chain(
            (
                how_many_like_this(lost[side].size, study.space.states),
                said("Give {side} a way back, or let the round finish when it comes to this.", side=Sides(side)),
            )
        ),
        witness=line_of_play(study.space, state),
        numbers=(("moves still to play", float(left)), ("situations", float(lost[side].size))),
        about=frozenset(np.flatnonzero(study.table[state]).tolist()),
        when_alone=all(_kept_once_alone(study, each) for each in sides),
    )

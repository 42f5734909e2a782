"""Point of no return: from here a side can no longer win, though the round is far from over.

Its pupils play on for nothing. Told only where the side could win at the start, where an end can
still be reached, and where at least half the moves of the shortest round are still to come.
"""

from __future__ import annotations

import numpy as np

from compose.check.pointing import how_many_like_this, span_of_last_move
from compose.check.study import Study
from compose.check.witness import line_of_play
from compose.check.words import sentence, subject
from grammar.finding import Basis, Finding, Severity

CODE = "C-no-return"


def no_return(study: Study) -> list[Finding]:
    """One finding for each side that can lose its chance long before the end."""
    if not study.contested:
        return []
    return [found for side in study.net.sides for found in _of(study, side)]


def _of(study: Study, side: str) -> list[Finding]:
    can_win = study.can_win(side)
    lost = np.flatnonzero(~can_win & study.far_from_over)
    if not can_win[0] or not lost.size:
        return []
    state = int(lost[0])
    left = int(study.to_end[state])
    return [
        Finding(
            code=CODE,
            severity=Severity.NOTE,
            title=sentence(
                f"{subject(side)} can lose every chance to win while at least {left} moves are still to be played."
            ),
            place=span_of_last_move(study, state),
            hint=f"{how_many_like_this(lost.size, study.space.states)} "
            f"Give {subject(side)} a way back, or let the round finish when it comes to this.",
            basis=Basis.PROVED,
            witness=line_of_play(study.space, state),
            numbers=(("moves still to play", float(left)), ("situations", float(lost.size))),
        )
    ]

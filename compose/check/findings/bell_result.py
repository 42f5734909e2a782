"""No result at the bell: the clock stops play in a state for which no sentence says who has won."""

from __future__ import annotations

import numpy as np

from compose.check.found import Found
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity

CODE = "C-bell-result"


def bell_result(study: Study) -> list[Found]:
    """The nearest such state; silent where the bell gives no results at all (play for its own sake)."""
    bell = study.net.bell
    if bell is None or not bell.results:
        return []
    unsaid = np.flatnonzero((study.at_bell < 0) & study.may_ring & ~study.ended)
    if not unsaid.size:
        return []
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title="The bell can ring when no sentence says what the result is.",
            place=bell.rule.span,
            hint='Add what counts otherwise, such as ", else draw".',
            witness=line_of_play(study.space, int(unsaid[0])),
            numbers=(("situations", float(unsaid.size)),),
        )
    ]

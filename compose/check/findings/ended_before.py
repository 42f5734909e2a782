"""Ended before the clock: the sheet says that play goes on until the clock stops, yet something ends it before."""

from __future__ import annotations

import numpy as np

from compose.check.found import Found
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import said

CODE = "C-ended-before"


def ended_before(study: Study) -> list[Found]:
    """The nearest such end, where the sheet is open-ended on purpose."""
    over = np.flatnonzero(study.ended)
    if not (study.net.open_ended and over.size):
        return []
    end = study.net.ends[study.space.end_of[over[0]]]
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said(
                'The sheet says that play goes on until the clock stops, yet this ends it before: "{end}".', end=end
            ),
            place=end.rule.span,
            hint="Leave out one of the two sentences.",
            witness=line_of_play(study.space, int(over[0])),
        )
    ]

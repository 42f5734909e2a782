"""Two winners: one state satisfies the wins of two sides, and no sentence before them says which counts.

An end should name one result (the workflow notion of proper completion, van der Aalst 1998, applied
to results). A draw written before the two wins settles the matter and is no finding.
"""

from __future__ import annotations

import numpy as np

from compose.check.found import Found, Value, Wins
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import said

CODE = "C-two-winners"


def two_winners(study: Study) -> list[Found]:
    """The nearest such end of play. Results at the bell are told in an order of their own ("else")."""
    space, ends = study.space, study.net.ends
    torn = np.flatnonzero(space.clash_of >= 0)
    if not torn.size:
        return []
    state = int(torn[0])
    one, other = ends[space.end_of[state]], ends[space.clash_of[state]]
    always = all(bool((space.clash_of[space.end_of == ends.index(each)] >= 0).all()) for each in (one, other))
    mend: Value = said(
        "Now the sentence written first counts ({wins}). "
        "Say what counts when both are so, before either of them: a draw, or which side.",
        wins=Wins(str(one.winner)),
    )
    if always and one.rule == other.rule:
        mend = said(
            "It is so each time, and now {wins}. "
            "Ask each side for something of its own, or let more points decide then.",
            wins=Wins(str(one.winner)),
        )
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said('One move can make both "{one}" and "{other}" true: two winners.', one=one, other=other),
            place=one.rule.span,
            hint=mend,
            others=() if other.rule.span == one.rule.span else (other.rule.span,),
            witness=line_of_play(study.space, state),
            numbers=(("situations", float(torn.size)),),
        )
    ]

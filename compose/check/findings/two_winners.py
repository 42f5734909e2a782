"""Two winners: one state satisfies the wins of two sides, and no sentence before them says which counts.

An end should name one result (the workflow notion of proper completion, van der Aalst 1998, applied
to results). A draw written before the two wins settles the matter and is no finding.
"""

from __future__ import annotations

import numpy as np

from compose.check.ends import first_of
from compose.check.study import Study
from compose.check.witness import line_of_play
from compose.net.net import End
from grammar.finding import Basis, Finding, Severity

CODE = "C-two-winners"


def two_winners(study: Study) -> list[Finding]:
    """The nearest such end in play, and the nearest such result at the bell."""
    return [*_in_play(study), *_at_bell(study)]


def _in_play(study: Study) -> list[Finding]:
    space, ends = study.space, study.net.ends
    torn = np.flatnonzero(space.clash_of >= 0)
    if not torn.size:
        return []
    state = int(torn[0])
    both = ends[space.end_of[state]], ends[space.clash_of[state]]
    return [_finding(study, state, both, "One move can make both", torn.size)]


def _at_bell(study: Study) -> list[Finding]:
    if study.net.bell is None:
        return []
    results = study.net.bell.results
    first, clash = first_of(results, study.table)
    torn = np.flatnonzero((clash >= 0) & ~study.ended)
    if not torn.size:
        return []
    state = int(torn[0])
    both = results[first[state]], results[clash[state]]
    return [_finding(study, state, both, "At the bell both can be so:", torn.size)]


def _finding(study: Study, state: int, both: tuple[End, End], how: str, count: int) -> Finding:
    one, other = both
    return Finding(
        code=CODE,
        severity=Severity.WARNING,
        title=f'{how} "{one.words}" and "{other.words}" true: two winners.',
        place=one.rule.span,
        hint=f"Now the sentence written first counts ({one.winner} wins). "
        "Say what counts when both are so, before either of them: a draw, or which side.",
        others=() if other.rule.span == one.rule.span else (other.rule.span,),
        basis=Basis.PROVED,
        witness=line_of_play(study.space, state),
        numbers=(("situations", float(count)),),
    )

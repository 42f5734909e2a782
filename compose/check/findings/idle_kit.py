"""Idle kit: balls or bodies that lie somewhere from the start and that no play ever uses or moves.

They were carried in for nothing, or a sentence about who may fetch them was forgotten.
"""

from __future__ import annotations

import numpy as np

from compose.check.study import Study
from grammar.finding import Basis, Finding, Severity
from grammar.span import nowhere

CODE = "C-idle-kit"


def idle_kit(study: Study) -> list[Finding]:
    """One finding for each place whose kit play never touches."""
    net = study.net
    used = {
        place
        for transition, happened in zip(net.transitions, study.space.happened, strict=True)
        if happened.fired
        for limit in transition.rate.limits
        for place in limit
    }
    idle = [
        number
        for number, place in enumerate(net.places)
        if place.token in ("ball", "load", "body") and place.start and not place.final and number not in used
    ]
    return [_finding(study, number) for number in idle if np.ptp(study.table[:, number]) == 0]


def _finding(study: Study, number: int) -> Finding:
    place = study.net.places[number]
    told = place.one if place.start == 1 else place.many
    return Finding(
        code=CODE,
        severity=Severity.WARNING,
        title=f"Nobody ever uses the {place.start} {told}.",
        place=nowhere(),
        hint="Say who may fetch or use what lies there, or leave it out of the kit.",
        basis=Basis.PROVED,
        numbers=(("states", float(study.space.states)),),
    )

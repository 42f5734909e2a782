"""Idle kit: balls or bodies that lie somewhere from the start and that no play ever uses or moves.

They were carried in for nothing, or a sentence about who may fetch them was forgotten.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from compose.check.condition import places_read
from compose.check.findings.stranded import likeness
from compose.check.found import Counted, Found, Likewise
from compose.check.study import Study
from compose.net.net import Transition
from grammar.finding import Severity
from grammar.said import said
from grammar.span import nowhere

CODE = "C-idle-kit"


def idle_kit(study: Study) -> list[Found]:
    """One finding for each place whose kit play never touches; like places of mirrored sides together."""
    net = study.net
    used = {
        place
        for transition, happened in zip(net.transitions, study.space.happened, strict=True)
        if happened.fired
        for place in (*(each for limit in transition.rate.limits for each in limit), *_taken_up(transition))
    }
    idle = [
        number
        for number, place in enumerate(net.places)
        if place.token in ("ball", "load", "body") and place.start and not place.final and number not in used
    ]
    alike: dict[object, list[int]] = {}
    for number in idle:
        if np.ptp(study.table[:, number]) == 0:
            place = net.places[number]
            alike.setdefault((likeness(study, place), place.start), []).append(number)
    return [_finding(study, *places) for places in alike.values()]


def _taken_up(transition: Transition) -> Iterable[int]:
    """What has to lie where somebody acts: of one who goes at a time no rate says so."""
    return places_read(transition.guard) if transition.side is not None else ()


def _finding(study: Study, *alike: int) -> Found:
    place, *others = (study.net.places[number] for number in alike)
    return Found(
        code=CODE,
        severity=Severity.WARNING,
        title=said(
            "Nobody ever uses the {number} {things}{likewise}.",
            number=place.start,
            things=Counted(place, place.start),
            likewise=Likewise(tuple(str(other.side) for other in others)),
        ),
        place=nowhere(),
        hint="Say who may fetch or use what lies there, or leave it out of the kit.",
        numbers=(("states", float(study.space.states)),),
        about=frozenset(alike),
    )

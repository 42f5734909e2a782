"""Where one side of two has nobody in play any more: what gets stuck there a line of the finish would mend."""

from __future__ import annotations

import numpy as np

from compose.check.condition import Bools
from compose.check.found import Sides, Value
from compose.check.study import Study, once
from grammar.core.values import Presence
from grammar.said import Written, said


@once
def left_alone(study: Study, side: str) -> Bools:
    """The states, no ends, in which the other side of two has nobody in play and this one has."""
    if len(study.net.sides) != 2:
        return np.zeros(study.space.states, dtype=np.bool_)
    (other,) = (each for each in study.net.sides if each != side)
    return ~study.ended & ~_anybody_in(study, other) & _anybody_in(study, side)


@once
def either_left_alone(study: Study) -> Bools:
    """The states in which either side of two is left alone."""
    alone = np.zeros(study.space.states, dtype=np.bool_)
    for side in study.net.sides:
        alone |= left_alone(study, side)
    return alone


@once
def stuck_alone(study: Study) -> tuple[str, ...]:
    """The sides that are left alone in dead ends, where play gets stuck nowhere else."""
    stuck = study.dead_ends
    if not stuck.size or not either_left_alone(study)[stuck].all():
        return ()
    return tuple(side for side in study.net.sides if left_alone(study, side)[stuck].any())


def alone_in(study: Study, state: int, beside: bool) -> tuple[Value, Value]:
    """That nobody of the other side is in where one is left alone, and the line of the finish that mends it, perhaps
    `beside` another mend."""
    alone, gone = sorted(study.net.sides, key=lambda side: not left_alone(study, side)[state])
    who = "a side" if set(study.net.mirrored) == set(study.net.sides) else alone
    line = Written(f'"{who} wins when the other side has no players in"')
    why = said("There nobody of {side} is in any more.", side=Sides(gone))
    over = "Or let the round finish then, such as {line}." if beside else "Let the round finish then, such as {line}."
    return why, said(over, line=line)


def _anybody_in(study: Study, side: str) -> Bools:
    places = [
        number for number, place in enumerate(study.net.places)
        if place.token == "player" and place.side == side and place.standing is Presence.PLAYING
    ]  # fmt: skip
    return np.asarray(study.table[:, places].any(axis=1), dtype=np.bool_)

"""Stranded: balls, bodies or waiting players gather where nothing can ever take them away again.

Once they are there no sentence fetches, frees or even uses them, though play goes on (a trap in the words of
T. Murata, Proceedings of the IEEE 77(4), 1989: once marked, it stays marked; here confirmed on the
explored graph, guards and all). Places where tokens may rest for good by the rules are `final` and
left alone; so are places where players take part in play, for staying there is no waiting.
"""

from __future__ import annotations

import numpy as np

from compose.check.graph import Longs
from compose.check.pointing import how_many_like_this, span_of_last_move, teacher_fetches
from compose.check.study import Study
from compose.check.witness import line_of_play
from compose.check.words import likewise
from compose.net.net import Place, Transition
from grammar.finding import Basis, Finding, Severity

CODE = "C-stranded"
MOVABLE = ("ball", "body", "player")


def stranded(study: Study) -> list[Finding]:
    """One finding for each place where tokens can be stranded; the like places of mirrored sides are told as one."""
    acting = {p for t in study.net.transitions for limit in t.rate.limits for p in limit}
    found: dict[str, list[tuple[int, Longs, bool]]] = {}
    for number, place in enumerate(study.net.places):
        playing = place.token == "player" and number in acting
        if place.token in MOVABLE and not place.final and not playing:
            states, sometimes = _at(study, number)
            if states.size:
                found.setdefault(_likeness(study, place), []).append((number, states, sometimes))
    return [_finding(study, alike) for alike in found.values()]


def _likeness(study: Study, place: Place) -> str:
    """The name of a place, with the same word for all mirrored sides."""
    parts = place.name.split("/")
    return "/".join("*" if part in study.net.mirrored and part == place.side else part for part in parts)


def _at(study: Study, place: int) -> tuple[Longs, bool]:
    """The states in which tokens of a place are stranded, and whether elsewhere somebody may take them away."""
    space = study.space
    counts = study.table[:, place]
    change = counts[space.targets] - counts[study.sources]
    using = np.array([_uses(transition, place) for transition in study.net.transitions], dtype=np.bool_)
    freeing = (change < 0) | using[space.transitions]
    kept = (counts >= 1) & ~study.ended
    if freeing.any():
        free = np.zeros(space.states, dtype=np.bool_)
        free[study.sources[freeing]] = True
        kept &= ~free & study.far_from_over
        if kept.any():
            kept &= ~study.reaching(free)
    elif not (change > 0).any():
        return np.zeros(0, dtype=np.int64), False
    return np.flatnonzero(kept), bool(freeing.any())


def _uses(transition: Transition, place: int) -> bool:
    return any(place in limit for limit in transition.rate.limits)


def _finding(study: Study, alike: list[tuple[int, Longs, bool]]) -> Finding:
    place, states, sometimes = alike[0]
    where = study.net.places[place]
    state = int(states[0])
    who = "free" if where.token == "player" else "fetch"
    since = "From here on nobody" if sometimes else "Nobody"
    also = likewise([str(study.net.places[other].side) for other, _, _ in alike[1:]], "of ")
    return Finding(
        code=CODE,
        severity=Severity.WARNING,
        title=f"{since} may ever {who} the {where.many}{also}: they stay there while play goes on.",
        place=span_of_last_move(study, state),
        hint=f"{how_many_like_this(states.size, study.space.states)} {_mend(where, who, sometimes)}",
        basis=Basis.PROVED,
        witness=line_of_play(study.space, state),
        numbers=(
            ("situations", float(states.size)),
            ("most at once", float(study.table[states, place].max())),
        ),
    )


def _mend(where: Place, who: str, sometimes: bool) -> str:
    """What to write, for balls as a sentence that may stand in the sheet."""
    if where.token == "ball" and sometimes:
        return "Give whoever may play them a way back, or let the round finish when it comes to this."
    if where.token != "ball" or where.kind is None:
        return f"Say who may {who} them and when, or say that they are out for the round."
    return f'Say who may fetch them and when, such as "{teacher_fetches(where)}".'

"""Dead end: a state that play can reach, that is no end, and in which nothing can happen.

A class that comes there stands about and does not know why. This is a reachable marking that enables
nothing (T. Murata, "Petri nets: properties, analysis and applications", Proceedings of the IEEE
77(4), 1989: deadlock) and is not an end; soundness forbids it (van der Aalst 1998, option to complete).
"""

from __future__ import annotations

from compose.check.findings.stranded import behind_dead_ends, forbidden_by
from compose.check.found import Found, Value
from compose.check.pointing import missing_in, span_of_last_move
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import Chain, said

CODE = "C-dead-end"


def dead_end(study: Study) -> list[Found]:
    """The nearest dead end, with the number of them; each is its own proof, however much was not looked into."""
    space = study.space
    stuck = study.dead_ends
    if not stuck.size:
        return []
    state = int(stuck[0])
    if study.net.bell is None:
        title = "Play can get stuck: nothing can happen any more, yet the round is not over."
    else:
        title = "Play can get stuck: nothing can happen any more until the bell."
    missing = missing_in(study, state)
    why: Value = "Nobody has anything to do there."
    if missing.items:
        why = said("Nobody can do anything there: {missing}.", missing=missing)
    lying = behind_dead_ends(study) if space.complete else {}
    mend = tuple(lying.values()) or ("Say who may fetch or return what is missing, or let the round finish then.",)
    forbidding = [rule for rule in (forbidden_by(study, place) for place in lying) if rule is not None]
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=title,
            place=forbidding[0].span if forbidding else span_of_last_move(study, state),
            hint=Chain((why, *mend)),
            witness=line_of_play(space, state),
            numbers=(("dead ends", float(stuck.size)), ("states", float(space.states))),
        )
    ]

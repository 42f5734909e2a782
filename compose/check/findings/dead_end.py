"""Dead end: a state that play can reach, that is no end, and in which nothing can happen.

A class that comes there stands about and does not know why. This is a reachable marking that enables
nothing (T. Murata, "Petri nets: properties, analysis and applications", Proceedings of the IEEE
77(4), 1989: deadlock) and is not an end; soundness forbids it (van der Aalst 1998, option to complete).
"""

from __future__ import annotations

from compose.check.findings.bringing_back import in_half, in_hands
from compose.check.findings.idle_kit import idle_kit
from compose.check.findings.no_end import no_end
from compose.check.findings.no_end import stuck as never_ends
from compose.check.findings.stranded import behind_dead_ends, forbidden_by, lying_places
from compose.check.findings.waiting_for_good import waiting_for_good
from compose.check.found import FetchedBy, Found, StoodUpBy, Value
from compose.check.left_alone import alone_in, stuck_alone
from compose.check.pointing import missing_in, missing_places, span_of_last_move
from compose.check.study import Study
from compose.check.witness import line_of_play
from grammar.core.values import At
from grammar.finding import Severity
from grammar.said import Chain, said

CODE = "C-dead-end"


def dead_end(study: Study) -> list[Found]:
    """The nearest dead end, with the number of them; each is its own proof, however much was not looked into.

    Silent where nothing ever ends the round, and play gets stuck for that alone.
    """
    space = study.space
    stuck = study.dead_ends
    if not stuck.size or (stuck[0] and space.complete and no_end(study) and never_ends(study)):
        return []
    state = int(stuck[0])
    if study.net.bell is None:
        title = "Play can get stuck: nothing can happen any more, yet the round is not over."
    else:
        title = "Play can get stuck: nothing can happen any more until the bell."
    if state == 0:
        title = "Nothing can happen from the start."
    missing = missing_in(study, state)
    why: Value = "Nobody has anything to do there."
    if missing.items:
        why = said("Nobody can do anything there: {missing}.", missing=missing)
    lying = behind_dead_ends(study) if space.complete else {}
    waiting = waiting_for_good(study, state)
    alone = bool(space.complete and not lying and stuck_alone(study)) and not any(w.at_the_set_up for w in waiting)
    mend = tuple(lying.values()) or tuple(each.mend for each in waiting) or (_mend(study, state),)
    if alone:
        why, over = alone_in(study, state, beside=bool(waiting))
        mend = (*(each.mend for each in waiting), over)
    if state == 0 and not waiting:
        mend = (*mend, *(each.title for each in idle_kit(study)))
    forbidding = [rule for rule in (forbidden_by(study, place) for place in lying) if rule is not None]
    forbidding += [each.line for each in waiting]
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=title,
            place=forbidding[0].span if forbidding else span_of_last_move(study, state),
            hint=Chain((why, *mend)),
            witness=line_of_play(space, state),
            numbers=(("dead ends", float(stuck.size)), ("states", float(space.states))),
            about=lying_places(study) if space.complete else frozenset(),
            when_alone=alone,
        )
    ]


def _mend(study: Study, state: int) -> Value:
    """What brings back what is missing: balls that lie where nobody takes them, targets that nobody stands up."""
    net = study.net
    missing = [net.places[place] for place in missing_places(study, state)]
    kinds = {each.kind for each in missing if each.token == "ball"}
    lying = [where for where, count in zip(net.places, study.table[state], strict=True)
             if count and where.token == "ball" and where.kind in kinds and not where.final]  # fmt: skip
    if state and lying and all(isinstance(each.standing, At) for each in lying):
        where = next((each for each in lying if not (in_hands(each) or in_half(each))), None)
        if where is None:
            return said(
                "Of no use to anybody then: {tokens}. Say what that side may do with them, or who has them then.",
                tokens=Chain(tuple(lying), ", "),
            )
        line = FetchedBy(where)
        pattern = 'Of no use to anybody then: {tokens}. Say who fetches them, such as "{line}".'
        return said(pattern, tokens=Chain(tuple(lying), ", "), line=line)
    if missing and all(each.token == "target" for each in missing):
        pattern = 'Say who stands them up again, such as "{line}", or let the round finish then.'
        return said(pattern, line=StoodUpBy(missing[0]))
    return "Say who may fetch or return what is missing, or let the round finish then."

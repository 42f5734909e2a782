"""Endless: play can come to where it goes round for ever and no end can be reached any more.

A bottom strongly connected component without an end is reachable; then the round does not end with
probability 1 (C. Baier and J.-P. Katoen, Principles of Model Checking, 2008, ch. 10). A single state
that only moves without effect leave is such a component too: players go on trying, nothing changes.
"""

from __future__ import annotations

import numpy as np

from compose.check.ends import played_on
from compose.check.found import Found, Share
from compose.check.graph import loop_from
from compose.check.pointing import span_of_last_move
from compose.check.study import Study
from compose.check.witness import line_of_play, steps_along
from grammar.finding import Severity
from grammar.said import said

CODE = "C-endless"

UNLIMITED = (
    "From {share} of {known} there is no way out. "
    'Give a way out of the loop, let the round finish there, or add a clock: "after 6 min: ..."'
)
PLAYED_ON = (
    "From {share} of {known} there is no way out. "
    'Give a way out of the loop, or let a level score be a draw when the time is over: "else a draw"'
)


def endless(study: Study) -> list[Found]:
    """The nearest loop without a way out; silent where no end exists at all or play is open on purpose.

    A loop whose every situation was looked into is its own proof, however much else was not.
    """
    net, space = study.net, study.space
    if (space.complete and not study.ended.any()) or (net.open_ended and net.bell is not None):
        return []
    loops = [trap for trap in study.traps if study.moves(int(trap[0])) and not study.past_counting[trap].any()]
    if not loops:
        return []
    nearest = loops[0]
    state = int(nearest[0])
    lost = int((~study.can_end).sum())
    what = "nothing that is tried changes anything" if len(nearest) == 1 else "play goes round for ever"
    then = "only the bell ends the round" if net.bell is not None else "the round can never end"
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING if net.bell is None else Severity.NOTE,
            title=said("Play can come to a point from which {what}: {then}.", what=what, then=then),
            place=span_of_last_move(study, state),
            hint=said(PLAYED_ON if played_on(net) else UNLIMITED, share=Share(lost, space.states), known=_known(study))
            if net.bell is None
            else "Give a way out of the loop, or let the round finish there.",
            witness=line_of_play(space, state),
            loop=steps_along(space, state, loop_from(space, state)),
            numbers=(("loops", float(len(loops))), ("states without end", float(lost))),
            about=frozenset(np.flatnonzero(study.table[~study.can_end].all(axis=0)).tolist()),
        )
    ]


def _known(study: Study) -> str:
    return "all situations that play can come to" if study.space.complete else "the situations looked at"

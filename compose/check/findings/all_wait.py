"""All wait: nobody has a reason to play on, for whoever does it alone can only lose.

No side by itself holds the round up here, which is told as a stall; but each of them leaves it to the others. Where
what the rules leave undone is left undone by all, play never ends (an attractor for all sides as one, see `forcing`);
and where one side plays on while the others do nothing that they may leave, it comes to no end but one that another
wins.
"""

from __future__ import annotations

import numpy as np

from compose.check.acts import Longs, powers_of
from compose.check.condition import Bools
from compose.check.findings.stall import CODE, hold_out, mends
from compose.check.found import Found, Sides
from compose.check.liberties import held_up, what_lets
from compose.check.pointing import how_many_like_this
from compose.check.study import Study, once
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import Chain, said
from grammar.span import nowhere


def all_wait(study: Study) -> list[Found]:
    """One finding where all sides can wait for one another."""
    waiting = all_waiting(study)
    if not waiting.size:
        return []
    net, state = study.net, int(waiting[0])
    blamed = what_lets(study, *net.sides)
    told = [each.rule.span for each in blamed if each.rule]
    clock = " until the bell" if net.bell is not None else " for ever"
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING if net.bell is None else Severity.NOTE,
            title=said(
                "All sides can wait for one another{clock}: whoever plays on alone can win nothing by it.", clock=clock
            ),
            place=told[0] if told else nowhere(),
            hint=Chain(
                (
                    how_many_like_this(waiting.size, study.space.states),
                    *mends(study, Sides(net.sides[0], tuple(net.sides[1:])), blamed, gains=True),
                )
            ),
            others=tuple(dict.fromkeys(told[1:])),
            witness=line_of_play(study.space, state),
            numbers=(("situations", float(waiting.size)),),
        )
    ]


@once
def all_waiting(study: Study) -> Longs:
    """The states in which all can wait and none gains by playing on; none where a side holds the round up by itself."""
    sides = study.net.sides
    if len(sides) < 2 or not study.contested or any(hold_out(study, side).any() for side in sides):
        return np.zeros(0, dtype=np.int64)
    waiting = held_up(study, powers_of(study.net, *sides)) & _level(study)
    for side in sides:
        if waiting.any():
            waiting &= ~study.reaching(_gained(study, side), _alone(study, side))
    return np.flatnonzero(waiting)


def _level(study: Study) -> Bools:
    """Where the bell, if there is one, would give nobody the win: who is ahead then waits for it, and wins."""
    return ~_any_of([study.ahead(side) for side in study.net.sides])


def _gained(study: Study, side: str) -> Bools:
    """Where the round is over and no other side has won it, or the side is ahead for the bell."""
    lost = _any_of([study.won(each) for each in study.net.sides if each != side])
    return (study.ended & ~lost) | study.ahead(side)


def _any_of(states: list[Bools]) -> Bools:
    return np.asarray(np.any(states, axis=0), dtype=np.bool_)


def _alone(study: Study, side: str) -> Bools:
    """The moves (edges,) that can come while all other sides leave whatever they may."""
    others = powers_of(study.net, *(each for each in study.net.sides if each != side))
    return ~others.leave[study.space.transitions]

"""The acts of one side in every state of play: which it may leave undone, and between which it chooses.

A rule that makes a side act (a hold limit) forces some act with that ball, never this act: of forced acts with
the same balls the side does one, no matter which. That is a duty.
"""

from __future__ import annotations

from collections import Counter

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.check.space import Ints, StateSpace
from compose.net.alike import first_like
from compose.net.net import Net, Transition
from grammar.frozen import frozen

Longs = NDArray[np.int64]
NONE = -1


@frozen(eq=False)
class Powers:
    """Of all transitions (transitions,): which the side may `leave` undone, which it `must` do if not others.

    Of the latter it may keep to those that it may `choose`; in a duty without such a one anything may come.
    """

    leave: Bools
    must: Bools
    choose: Bools


@frozen(eq=False)
class Acts:
    """The side's attempts, numbered; an attempt is one thing tried in one state, with all its outcomes.

    `open` (edges,) are the moves that are not the side's to choose. `attempt_of` (edges,) is the attempt
    whose outcome a move is. `state_of` and `duty_of` (attempts,): its state and duty. `owed_in` (duties,):
    the state of a duty. -1 stands for none.
    """

    open: Bools
    attempt_of: Longs
    state_of: Longs
    duty_of: Longs
    owed_in: Longs


def powers_of(net: Net, *sides: str) -> Powers:
    """What the rules leave to a side, or to several that act as one."""
    mine = _mask([transition.side in sides for transition in net.transitions])
    forced = _mask([transition.forced for transition in net.transitions])
    return Powers(mine & ~forced, mine & forced, mine & forced)


def duty_of(transition: Transition, net: Net) -> frozenset[int]:
    """The places of the balls that an act is done with."""
    for places in (*(ratio.numerator for ratio in transition.rate.ratios), *transition.rate.limits):
        if places and all(net.places[place].token == "ball" for place in places):
            return frozenset(places)
    return frozenset()


def acts_of(space: StateSpace, sources: Ints, powers: Powers, with_left: bool = True) -> Acts:
    """The attempts of a side with these powers; `sources` as given by `space.sources()`.

    Those that it may leave undone are only numbered `with_left`: who keeps out of something just leaves them.
    """
    net = space.net
    duties = [duty_of(transition, net) for transition in net.transitions]
    tried = [(transition.attempt, owed) for transition, owed in zip(net.transitions, duties, strict=True)]
    duty, kind = (np.array(first_like(values), dtype=np.int64) for values in (duties, tried))
    must = powers.must & _several(duty, kind, powers.must)
    by, source = space.transitions, sources.astype(np.int64)
    owed = source * len(net.transitions) + duty[by]
    chosen = (powers.choose & must)[by]
    kept_from = must[by] & ~chosen
    kept_from[kept_from] = np.isin(owed[kept_from], owed[chosen])
    mine = np.flatnonzero((powers.leave[by] | chosen) if with_left else chosen)
    state_of, number = _numbered(source[mine], kind[by[mine]])
    attempt_of = np.full(space.edges, NONE, dtype=np.int64)
    attempt_of[mine] = number
    owing = np.flatnonzero(chosen)
    owed_in, debt = _numbered(source[owing], duty[by[owing]])
    duty_of_attempt = np.full(len(state_of), NONE, dtype=np.int64)
    duty_of_attempt[attempt_of[owing]] = debt
    return Acts(
        open=~powers.leave[by] & ~chosen & ~kept_from,
        attempt_of=attempt_of,
        state_of=state_of,
        duty_of=duty_of_attempt,
        owed_in=owed_in,
    )


def _numbered(source: Longs, sort: Longs) -> tuple[Longs, Longs]:
    """Each pair of a state and a sort once: its state; and for each place, where the sources ascend, its number.

    Sorts are few, so that ordering by them takes no comparing (a radix sort), and those of one state lie together.
    """
    order = np.argsort(sort.astype(np.min_scalar_type(int(sort.max(initial=0)))), kind="stable")
    state, like = source[order], sort[order]
    first = np.ones(len(order), dtype=np.bool_)
    first[1:] = (state[1:] != state[:-1]) | (like[1:] != like[:-1])
    number = np.empty(len(order), dtype=np.int64)
    number[order] = np.cumsum(first) - 1
    return state[first], number


def _several(duty: Longs, kind: Longs, must: Bools) -> Bools:
    """For each transition whether there is more than one act for its duty: of one there is nothing to choose."""
    acts = {(int(d), int(k)) for d, k in zip(duty[must], kind[must], strict=True)}
    count = Counter(d for d, _ in acts)
    return _mask([count[int(d)] > 1 for d in duty])


def _mask(values: list[bool]) -> Bools:
    return np.array(values, dtype=np.bool_)

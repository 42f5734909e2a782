"""What the rules leave to a side, and which of that lets it hold the round up."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

import numpy as np

from compose.check.acts import Powers, duty_of, powers_of
from compose.check.condition import Bools
from compose.check.forcing import can_avoid
from compose.check.study import Study
from compose.net.net import Net, Rule, Transition
from compose.net.on_the_way import is_picked_up
from compose.net.told import Tried
from grammar.frozen import frozen


class Kind(Enum):
    """What is left to a side, in the order in which it is the last to be blamed."""

    CHOOSE = "choose which act to do with a ball"
    LEAVE = "leave an act without a ball undone"
    FETCH = "not fetch"
    HOLD = "keep a ball"


@frozen(eq=False)
class Liberty:
    """Something left to a side: by which sentence, about which moves (transitions,) and which balls (places)."""

    kind: Kind
    rule: Rule | None
    moves: Bools
    balls: tuple[int, ...]


def held_up(study: Study, powers: Powers) -> Bools:
    """Where play can still end, but never does as long as a side with these powers does not want it to."""
    if not (powers.leave.any() or powers.choose.any()):
        return np.zeros(study.space.states, dtype=np.bool_)
    return study.can_end & can_avoid(study, powers, study.ended)


def what_lets(study: Study, *sides: str) -> tuple[Liberty, ...]:
    """The fewest liberties that would have to go for the sides never to hold the round up, as few as none can stay."""
    blamed = liberties_of(study.net, *sides)
    for liberty in blamed:
        others = tuple(each for each in blamed if each is not liberty)
        if not held_up(study, without(powers_of(study.net, *sides), others)).any():
            blamed = others
    return blamed


def without(powers: Powers, liberties: Sequence[Liberty]) -> Powers:
    """The powers of a side that lost these liberties."""
    leave, must, choose = powers.leave.copy(), powers.must.copy(), powers.choose.copy()
    for liberty in liberties:
        if liberty.kind is not Kind.CHOOSE:
            leave &= ~liberty.moves
            must |= liberty.moves
        if liberty.kind is Kind.HOLD:
            choose |= liberty.moves
    for liberty in liberties:
        if liberty.kind is Kind.CHOOSE:
            choose &= ~liberty.moves
    return Powers(leave, must, choose)


def liberties_of(net: Net, *sides: str) -> tuple[Liberty, ...]:
    """All that is left to a side, or to several, the likeliest to be blamed last."""
    groups: dict[tuple[Kind, Rule | None], list[int]] = {}
    for number, transition in enumerate(net.transitions):
        if transition.side in sides:
            rule = transition.rules[0] if transition.rules else None
            if not transition.forced:
                kind = _left(transition, net)
                groups.setdefault((kind, None if kind is Kind.HOLD else rule), []).append(number)
            if transition.forced or _left(transition, net) is Kind.HOLD:
                groups.setdefault((Kind.CHOOSE, rule), []).append(number)
    order = list(Kind)
    found = [_liberty(net, kind, moves) for (kind, _), moves in groups.items()]
    return tuple(sorted(found, key=lambda liberty: order.index(liberty.kind)))


def _left(transition: Transition, net: Net) -> Kind:
    if transition.attempt.ball is not None:
        told = transition.told
        return Kind.LEAVE if isinstance(told, Tried) and is_picked_up(told.moment) else Kind.HOLD
    fetched = transition.attempt.skill != "take" and duty_of(transition, net)  # who takes a ball along keeps it
    return Kind.FETCH if fetched else Kind.LEAVE


def _liberty(net: Net, kind: Kind, moves: Sequence[int]) -> Liberty:
    mask = np.zeros(len(net.transitions), dtype=np.bool_)
    mask[list(moves)] = True
    first = net.transitions[moves[0]]
    balls = dict.fromkeys(place for move in moves for place in sorted(duty_of(net.transitions[move], net)))
    return Liberty(kind, first.rules[0] if first.rules else None, mask, tuple(balls))

"""One line of play carried out move by move: what the counts are after each."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from compose.check.effect import Act, Columns
from compose.check.enabled import Enabling
from compose.check.reactions import Reactions
from compose.net.net import Net, Reaction


def walk(net: Net, moves: Sequence[int]) -> tuple[tuple[int, ...], ...]:
    """The markings from the set-up on, one more than there are moves (numbers of transitions).

    Raises ValueError where a move cannot be made.
    """
    enabling, reactions = Enabling(net), Reactions(net)
    found = [net.start()]
    for number in moves:
        table = np.array([found[-1]], dtype=np.int32)
        if not enabling.of(table)[0][number, 0]:
            raise ValueError(f"move {len(found)}, transition {number}, cannot be made")
        columns = Columns(table, None)
        Act(net.transitions[number].effects, net.places).carry_out(columns)
        reactions.follow(reactions.watch(table), columns, None, 1)
        found.append(tuple(int(columns(place)[0]) for place in range(len(net.places))))
    return tuple(found)


def followed(net: Net, before: Sequence[int], number: int) -> tuple[Reaction, ...]:
    """What followed at once from a move (the number of a transition) out of a marking, and changed a count."""
    if not net.reactions:
        return ()
    table, reactions = np.array([before], dtype=np.int32), Reactions(net)
    columns = Columns(table, None)
    Act(net.transitions[number].effects, net.places).carry_out(columns)
    reactions.follow(reactions.watch(table), columns, None, 1)
    return tuple(each for each, act in zip(net.reactions, reactions.acts, strict=True) if any(act.changed))

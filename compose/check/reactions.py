"""What follows at once: reactions whose condition a move makes true, until nothing new is true.

One round compares the marking before a change with the one after it. Every reaction whose guard
was false before and is true after is carried out, in the order written; what they do together is
the next change. More than `ROUNDS` rounds means that reactions chase each other for ever.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools, evaluate, places_read
from compose.check.effect import Act, Columns
from compose.net.net import All, Assign, Move, Net, Shift

ROUNDS = 16
Watch = list[Bools]


class Reactions:
    """The reactions of one net, with a log of what each ever did."""

    def __init__(self, net: Net) -> None:
        self.net = net
        self.acts = [Act(r.effects, net.places) for r in net.reactions]
        self.reads = [places_read(r.guard) for r in net.reactions]

    def watch(self, table: NDArray[np.int32]) -> Watch:
        """Which reaction guards hold before any move, one array (states,) for each reaction."""
        return [evaluate(r.guard, lambda p: table[:, p], len(table)) for r in self.net.reactions]

    def follow(self, watch: Watch, columns: Columns, rows: NDArray[np.int64] | None, states: int) -> NDArray[np.int64]:
        """Carry out on `columns` all that follows; gives the states where it does not settle."""
        before = [held if rows is None else held[rows] for held in watch]
        touched = set(columns.touched)
        for turn in range(ROUNDS + 1):
            now = {
                number: evaluate(reaction.guard, columns, states)
                for number, reaction in enumerate(self.net.reactions)
                if self.reads[number] & touched
            }
            risen = {number: held & ~before[number] for number, held in now.items()}
            before = [now.get(number, held) for number, held in enumerate(before)]
            due = {
                number: where for number, held in risen.items() if (where := self._only(number, held, columns)).any()
            }
            if not due:
                break
            if turn == ROUNDS:
                return np.flatnonzero(np.any(list(due.values()), axis=0))
            touched = self._carry_out(due, columns)
        return np.zeros(0, dtype=np.int64)

    def _only(self, number: int, risen: Bools, columns: Columns) -> Bools:
        """Where something follows of what has become true."""
        only = self.net.reactions[number].only
        return risen if only == All() else risen & evaluate(only, columns, len(risen))

    def _carry_out(self, due: dict[int, Bools], columns: Columns) -> set[int]:
        """Carry out the reactions that are due; gives the places they may have touched."""
        touched: set[int] = set()
        for number, where in due.items():
            self.acts[number].carry_out(columns, where)
            touched.update(place for effect in self.acts[number].effects for place in _places(effect))
        return touched


def _places(effect: Move | Shift | Assign) -> tuple[int, ...]:
    return (effect.source, effect.target) if isinstance(effect, Move) else (effect.place,)

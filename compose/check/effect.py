"""Effects carried out in their order on many markings at once."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.net.net import Assign, Effect, Move, Place, Room, Shift

Column = NDArray[np.int32]
Carried = Callable[[int | None, int, Column], None]


class Columns:
    """The counts of some states, place by place, cut from a wider table only where touched."""

    def __init__(self, table: NDArray[np.int32], rows: NDArray[np.int64] | None) -> None:
        self._table = table
        self._rows = rows
        self._own: dict[int, Column] = {}
        self.touched: set[int] = set()

    def __call__(self, place: int) -> Column:
        column = self._own.get(place)
        if column is None:
            whole: Column = self._table[:, place]
            column = whole if self._rows is None else whole[self._rows]
            self._own[place] = column
        return column

    def put(self, place: int, column: Column) -> None:
        """Replace the counts of a place (the table itself is never written)."""
        self._own[place] = column
        self.touched.add(place)


class Act:
    """The effects of one transition or reaction, with a log of what they were ever seen to do.

    `changed[k]`: effect k changed a count. `short[k]`: it wanted more than there was or fitted
    (fewer tokens at the source, no room at the target, a counter at its end).
    `carried`, where given, hears of every change: from which place (None: out of nothing) to which
    how many tokens went, one number for each of the states (negative: into nothing).
    """

    carried: Carried | None = None

    def __init__(self, effects: tuple[Effect, ...], places: tuple[Place, ...]) -> None:
        self.effects = effects
        self.fired = False
        self.changed = [False] * len(effects)
        self.short = [False] * len(effects)
        self._places = places

    def done_wholly(self) -> None:
        """Note that every effect did what it says, and found enough and room everywhere."""
        self.fired = True
        self.changed = [True] * len(self.effects)

    def carry_out(self, columns: Columns, only: Bools | None = None) -> None:
        """Apply the effects to the columns; `only` limits them to some of the states."""
        self.fired = True
        for number, effect in enumerate(self.effects):
            if isinstance(effect, Move):
                self._move(number, effect, columns, only)
            else:
                self._set(number, effect, columns, only)

    def _move(self, number: int, move: Move, columns: Columns, only: Bools | None) -> None:
        if move.source == move.target:
            return
        source, target = columns(move.source), columns(move.target)
        wanted = source if move.amount is None else np.int32(move.amount)
        taken = np.minimum(source, wanted)
        taken = np.minimum(taken, self._places[move.target].capacity - target)
        for room in move.rooms:
            taken = np.minimum(taken, _left(room, columns))
        if only is not None:
            taken = np.where(only, taken, 0).astype(np.int32)
        self._note(number, taken != 0, taken < wanted, only)
        if self.carried is not None:
            self.carried(move.source, move.target, taken)
        columns.put(move.source, source - taken)
        columns.put(move.target, target + taken)

    def _set(self, number: int, effect: Shift | Assign, columns: Columns, only: Bools | None) -> None:
        before = columns(effect.place)
        wanted = before + np.int32(effect.by) if isinstance(effect, Shift) else np.full_like(before, effect.value)
        after = np.clip(wanted, 0, self._places[effect.place].capacity)
        if only is not None:
            after = np.where(only, after, before)
        self._note(number, after != before, after != wanted, only)
        if self.carried is not None:
            self.carried(None, effect.place, after - before)
        columns.put(effect.place, after)

    def _note(self, number: int, changed: Bools, short: Bools, only: Bools | None) -> None:
        self.changed[number] = self.changed[number] or bool(changed.any())
        self.short[number] = self.short[number] or bool((short if only is None else short & only).any())


def _left(room: Room, columns: Columns) -> Column:
    """How many more there is room for."""
    left: Column = np.full_like(columns(room.places[0]), room.most)
    for place in room.places:
        left = left - columns(place)
    return np.maximum(left, 0)

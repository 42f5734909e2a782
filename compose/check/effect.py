"""Effects carried out in their order on many markings at once."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools
from compose.net.net import Assign, Effect, Move, Place

Column = NDArray[np.int32]


class Log:
    """What the effects of one transition or reaction were ever seen to do.

    `changed[k]`: effect k changed a count. `short[k]`: it wanted more than there was or fitted
    (fewer tokens at the source, no room at the target, a counter at its end).
    """

    def __init__(self, effects: int) -> None:
        self.fired = False
        self.changed = [False] * effects
        self.short = [False] * effects


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


def carry_out(
    effects: tuple[Effect, ...],
    columns: Columns,
    places: tuple[Place, ...],
    log: Log,
    only: Bools | None = None,
) -> None:
    """Apply the effects to the columns; `only` limits them to some of the states."""
    log.fired = True
    for number, effect in enumerate(effects):
        if isinstance(effect, Move):
            _move(effect, columns, places, log, number, only)
        else:
            _set(effect, columns, places, log, number, only)


def _move(
    move: Move, columns: Columns, places: tuple[Place, ...], log: Log, number: int, only: Bools | None
) -> None:
    if move.source == move.target:
        return
    source, target = columns(move.source), columns(move.target)
    wanted = source if move.amount is None else np.int32(move.amount)
    taken = np.minimum(source, wanted)
    taken = np.minimum(taken, places[move.target].capacity - target)
    if only is not None:
        taken = np.where(only, taken, 0).astype(np.int32)
    if not log.changed[number]:
        log.changed[number] = bool(taken.any())
    if not log.short[number]:
        fewer = taken < wanted
        log.short[number] = bool((fewer if only is None else fewer & only).any())
    columns.put(move.source, source - taken)
    columns.put(move.target, target + taken)


def _set(
    effect: Effect, columns: Columns, places: tuple[Place, ...], log: Log, number: int, only: Bools | None
) -> None:
    assert not isinstance(effect, Move)
    before = columns(effect.place)
    if isinstance(effect, Assign):
        wanted = np.full_like(before, effect.value)
    else:
        wanted = before + np.int32(effect.by)
    after = np.clip(wanted, 0, places[effect.place].capacity)
    if only is not None:
        after = np.where(only, after, before)
    if not log.changed[number]:
        log.changed[number] = bool((after != before).any())
    if not log.short[number]:
        cut = after != wanted
        log.short[number] = bool((cut if only is None else cut & only).any())
    columns.put(effect.place, after)

"""All moves out of many markings at once: guards, rates, effects, and what follows at once."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.effect import Act, Columns
from compose.check.enabled import Enabling
from compose.check.encoding import Codes, Encoding
from compose.check.rate import Floats
from compose.check.reactions import Reactions
from compose.net.net import Net
from grammar.frozen import frozen

Rows = NDArray[np.int64]


@frozen(eq=False)
class Found:
    """Edges in the order of their source row, then of the transition; `degrees` has one entry per row."""

    codes: Codes
    rows: Rows
    transitions: NDArray[np.int32]
    factors: Floats
    degrees: NDArray[np.int64]
    chases: list[tuple[int, int]]


class Successors:
    """The moves of one net."""

    def __init__(self, net: Net, code: Encoding) -> None:
        self.net = net
        self.strides = {place: stride for place, stride, _ in code.digits}
        self.acts = [Act(t.effects, net.places) for t in net.transitions]
        self.enabling = Enabling(net)
        self.reactions = Reactions(net)

    def of(self, codes: Codes, table: NDArray[np.int32]) -> Found:
        """Every enabled transition in every row of `table` (states, places), none of them an end."""
        count = len(codes)
        enabled, factors = self.enabling.of(table)
        after = np.zeros((len(self.net.transitions), count), dtype=np.int64)
        watch = self.reactions.watch(table)
        chases: list[tuple[int, int]] = []
        for number in np.flatnonzero(enabled.any(axis=1)):
            here = enabled[number]
            rows = None if here.all() else np.flatnonzero(here)
            columns = Columns(table, rows)
            self.acts[number].carry_out(columns)
            if self.net.reactions:
                restless = self.reactions.follow(watch, columns, rows, count if rows is None else len(rows))
                places = restless if rows is None else rows[restless]
                chases += [(int(row), int(number)) for row in places]
            reached = self._recoded(codes if rows is None else codes[rows], table, columns, rows)
            after[number, slice(None) if rows is None else rows] = reached
        rows, transitions = np.nonzero(enabled.T)
        return Found(
            codes=after.T[rows, transitions],
            rows=rows,
            transitions=transitions.astype(np.int32),
            factors=factors[self.enabling.rate_of[transitions], rows],
            degrees=enabled.sum(axis=0),
            chases=chases,
        )

    def _recoded(self, codes: Codes, table: NDArray[np.int32], columns: Columns, rows: Rows | None) -> Codes:
        """The codes after the effects, from the change of the places touched."""
        for place in columns.touched:
            stride = self.strides.get(place)
            if stride is not None:
                before = table[:, place] if rows is None else table[rows, place]
                codes = codes + (columns(place) - before).astype(np.int64) * stride
        return codes

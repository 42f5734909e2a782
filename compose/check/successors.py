"""All moves out of many markings at once: guards, rates, effects, and what follows at once."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from compose.check.certain import Steps
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
        self.steps = Steps(net, self.strides)
        self.enabling = Enabling(net)
        self.reactions = Reactions(net)

    def of(self, codes: Codes, table: NDArray[np.int32]) -> Found:
        """Every enabled transition in every row of `table` (states, places), none of them an end."""
        count = len(codes)
        enabled, factors = self.enabling.of(table)
        watch, lacking = self.reactions.watch(table), self.steps.lacking(table)
        steps = np.zeros(len(enabled), dtype=np.int64)
        worked: dict[int, Codes] = {}  # those whose step is not the same everywhere, each with the codes after it
        chases: list[tuple[int, int]] = []
        for number in np.flatnonzero(enabled.any(axis=1)):
            here = enabled[number]
            step = self.steps.of(number, here, lacking)
            if step is not None:
                self.acts[number].done_wholly()
                steps[number] = step
                continue
            rows = None if here.all() else np.flatnonzero(here)
            columns = Columns(table, rows)
            self.acts[number].carry_out(columns)
            if self.net.reactions:
                restless = self.reactions.follow(watch, columns, rows, count if rows is None else len(rows))
                places = restless if rows is None else rows[restless]
                chases += [(int(row), int(number)) for row in places]
            reached = self._recoded(codes if rows is None else codes[rows], table, columns, rows)
            worked[int(number)] = reached if rows is None else _spread(reached, rows, count)
        degrees = enabled.sum(axis=0)
        rows = np.repeat(np.arange(count), degrees)
        transitions = np.flatnonzero(np.ascontiguousarray(enabled.T)) - rows * len(enabled)
        after = codes[rows] + steps[transitions]
        if worked:
            _put(worked, after, rows, transitions)
        return Found(
            codes=after,
            rows=rows,
            transitions=transitions.astype(np.int32),
            factors=factors[self.enabling.rate_of[transitions], rows],
            degrees=degrees,
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


def _spread(reached: Codes, rows: Rows, count: int) -> Codes:
    whole = np.zeros(count, dtype=np.int64)
    whole[rows] = reached
    return whole


def _put(worked: dict[int, Codes], after: Codes, rows: Rows, transitions: Rows) -> None:
    """Write the codes that were worked out over those that a step gives."""
    places = np.full(int(transitions.max(initial=0)) + 1, -1, dtype=np.int64)
    places[list(worked)] = np.arange(len(worked))
    edges = np.flatnonzero(places[transitions] >= 0)
    after[edges] = np.array(list(worked.values()))[places[transitions[edges]], rows[edges]]

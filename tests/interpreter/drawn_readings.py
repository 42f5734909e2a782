"""A drawn game read three ways: by its records, by the second reader, by the program with its net."""

from __future__ import annotations

from functools import cached_property

import library
from compose.check import Budget, StateSpace, explore
from compose.net.from_game import net_of
from grammar.parse import parse
from grammar.resolve import resolve
from tests.interpreter.board import State
from tests.interpreter.compare import Reading, counted_reading, read_by_net
from tests.interpreter.drawn.expected import broken
from tests.interpreter.drawn.game import drawn_game
from tests.interpreter.rounds import Round, Seen, TooManyError, reachable
from tests.interpreter.sheet import Sheet
from tests.interpreter.sheets import granted

MOST_STATES = 200
MOST_WITH_NAMES = 400


class Drawn:
    """One drawn game; each way of reading it is tried once."""

    def __init__(self, number: int) -> None:
        self.draft = drawn_game(number)
        self.players = dict.fromkeys(self.draft.sides, self.draft.players)
        rules = parse(self.draft.text())
        assert rules.value is not None, (self.draft.text(), [finding.title for finding in rules.findings])
        self.tree = rules.value.games[0]

    @cached_property
    def rounds(self) -> Round:
        return Round(Sheet(self.tree, granted(), self.players))

    @cached_property
    def found(self) -> dict[State, Seen] | None:
        """What the second reader can reach; None where that is more than is looked at."""
        try:
            return reachable(self.rounds, MOST_WITH_NAMES)
        except TooManyError:
            return None

    @cached_property
    def refused(self) -> tuple[str, ...]:
        """Why the program refuses the sheet; a drawn sheet is sound, so that there must be nothing."""
        resolved = resolve(self.tree, library.kit_categories())
        if resolved.value is None:
            return tuple(finding.title for finding in resolved.findings)
        net = net_of(resolved.value, granted(), self.players)
        return () if net.value is not None else tuple(finding.title for finding in net.findings)

    @cached_property
    def net(self) -> Reading | None:
        """What the net says; None where it has more states than are looked at."""
        resolved = resolve(self.tree, library.kit_categories())
        assert resolved.value is not None
        net = net_of(resolved.value, granted(), self.players)
        assert net.value is not None
        space = explore(net.value, Budget(states=MOST_STATES))
        return read_by_net(space) if isinstance(space, StateSpace) and space.complete else None

    @property
    def order_matters(self) -> bool:
        """Whether the order of a queue may decide who comes: the net counts who waits and keeps no order."""
        return bool(self.rounds.in_turn) and (bool(self.draft.role) or self.draft.queue_is_shared)

    @cached_property
    def without_order(self) -> Reading | None:
        """What the second reader finds where nobody knows the order of a queue."""
        if not self.order_matters:
            return counted_reading(self.rounds, self.found) if self.found is not None else None
        rounds = Round(Sheet(self.tree, granted(), self.players, orderly=False))
        try:
            return counted_reading(rounds, reachable(rounds, MOST_WITH_NAMES))
        except TooManyError:
            return None

    def against_records(self) -> str:
        """What the second reader plays otherwise than the records say."""
        return "" if self.found is None else "; ".join(broken(self.draft, self.rounds, self.found)[:3])

    def against_net(self) -> str:
        """What the net says otherwise than the second reader, "" for nothing or where it is too large."""
        if self.refused:
            return f"refused: {'; '.join(self.refused)}"
        if self.net is None:
            return ""
        if self.without_order is None:
            return "" if self.order_matters else "the second reader comes to no end where the net does"
        return self.without_order.differs(self.net)

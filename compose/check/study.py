"""One explored space with the graph facts that several findings need, each worked out at most once."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from functools import cached_property, wraps
from typing import Any, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

from compose.check.condition import Bools, clauses
from compose.check.ends import first_of
from compose.check.graph import Backward, Ints, Longs, backward, bottom_components, can_reach, distances
from compose.check.patience import Patience
from compose.check.space import StateSpace, markings
from compose.net.net import Comparison, Condition

Finder = TypeVar("Finder", bound=Callable[..., Any])
LEAST_LONG = 3  # moves still needed before it is worth saying that the round "goes on" (assumption)


def once(finder: Finder) -> Finder:
    """What several ask of a study is worked out for the first of them."""

    @wraps(finder)
    def known(study: Study, *asked: Hashable) -> Any:
        if (finder, *asked) not in study.kept:
            study.kept[finder, *asked] = finder(study, *asked)
        return study.kept[finder, *asked]

    return cast(Finder, known)


class Study:
    """Facts about a space; those about absence ("can never") need a complete space.

    Whatever walks over the space raises StoppedError once somebody stops it. `turned` is the second half
    with the groups changed over, where they are not equally large.
    """

    def __init__(self, space: StateSpace, patience: Patience | None = None, turned: Study | None = None) -> None:
        self.space = space
        self.net = space.net
        self.turned = turned
        self.patience = patience if patience is not None else Patience()
        self.kept: dict[Hashable, Any] = {}

    @cached_property
    def table(self) -> NDArray[np.int32]:
        """All markings, shape (states, places)."""
        return markings(self.space, np.arange(self.space.states))

    @cached_property
    def ended(self) -> Bools:
        """Which states are ends."""
        return self.space.ended()

    @cached_property
    def sources(self) -> Ints:
        """The source of every edge."""
        return self.space.sources()

    @cached_property
    def back(self) -> Backward:
        """The edges turned round."""
        self.patience.asked("turning the moves round")
        return backward(self.space, self.sources)

    @cached_property
    def to_end(self) -> Ints:
        """Moves to the nearest end, -1 where no end can be reached."""
        return distances(self.space, self.back, self.ended, patience=self.patience)

    @cached_property
    def can_end(self) -> Bools:
        """From which states some end can be reached (option to complete holds where all can).

        Where the space is not whole, whatever was not looked into counts as an end: what is left is proved.
        W. M. P. van der Aalst, "The application of Petri nets to workflow management", Journal of
        Circuits, Systems and Computers 8(1), 1998, soundness.
        """
        if self.space.complete:
            return np.greater_equal(self.to_end, 0)
        return self.reaching(self.ended | (np.arange(self.space.states) >= self.space.expanded))

    @cached_property
    def dead_ends(self) -> Longs:
        """The states that are no ends and in which nothing can happen."""
        looked_into = np.arange(self.space.states) < self.space.expanded
        return np.flatnonzero((np.diff(self.space.offsets) == 0) & ~self.ended & looked_into)

    @cached_property
    def traps(self) -> list[Longs]:
        """The bottom components without an end: single states where nothing changes, or loops."""
        if self.can_end.all():
            return []
        self.patience.asked("looking for loops")
        return bottom_components(self.space, ~self.can_end)

    @cached_property
    def far_from_over(self) -> Bools:
        """Where an end can be reached, but only after at least half the moves of the shortest round."""
        shortest = int(self.to_end[0])
        return np.greater_equal(self.to_end, max(LEAST_LONG, (shortest + 1) // 2))

    @cached_property
    def may_ring(self) -> Bools:
        """Where the clock may end the round: once all its other moments have passed."""
        schedule = self.net.schedule
        if self.net.bell is None or schedule is None:
            return np.full(self.space.states, self.net.bell is not None)
        return np.equal(self.table[:, schedule.place], len(schedule.times_s))

    @cached_property
    def at_bell(self) -> NDArray[np.int16]:
        """The result at the bell in each state, -1 for none; shape (states,)."""
        if self.net.bell is None:
            return np.full(self.space.states, -1, dtype=np.int16)
        return first_of(self.net.bell.results, self.table)[0]

    def won(self, side: str) -> Bools:
        """Where the side has won: by an end, or by the bell ringing there."""
        won = self._named(self.space.end_of, [end.winner == side for end in self.net.ends])
        if self.net.bell is not None:
            ahead = self._named(self.at_bell, [end.winner == side for end in self.net.bell.results])
            won |= ahead & ~self.ended
        return won

    def ahead(self, side: str) -> Bools:
        """Where the bell would give the side the win (nowhere without a bell)."""
        results = self.net.bell.results if self.net.bell is not None else ()
        return self._named(self.at_bell, [end.winner == side for end in results])

    @once
    def can_win(self, side: str) -> Bools:
        """From which states the side can still win, if everybody helps.

        True at the start for every side: the game is weakly winnable (N. Love, T. Hinrichs, D. Haley,
        E. Schkufza, M. Genesereth, General Game Playing: Game Description Language Specification,
        Stanford Logic Group LG-2006-01, 2008).
        """
        return self.reaching(self.won(side))

    def reaching(self, goals: Bools, allowed: Bools | None = None) -> Bools:
        """From which states a goal can be reached; `allowed` (edges,) leaves some moves out."""
        return can_reach(self.space, self.back, goals, allowed, self.patience)

    @cached_property
    def past_counting(self) -> Bools:
        """Where play goes on and points that an end or the bell compares are counted no further: what then never comes
        by them is not known."""
        results = self.net.bell.results if self.net.bell is not None else ()
        found = ~self.ended
        compared = {place for end in (*self.net.ends, *results) for place in _compared(end.guard)}
        points = [place for place in compared if self.net.places[place].token == "points"]
        most = [self.table[:, place] == self.net.places[place].capacity for place in points]
        return found & np.logical_or.reduce(most) if most else np.zeros_like(found)

    @cached_property
    def contested(self) -> bool:
        """Whether any end or bell result names a winner at all."""
        results = self.net.bell.results if self.net.bell is not None else ()
        return any(end.winner is not None for end in (*self.net.ends, *results))

    def moves(self, state: int) -> bool:
        """Whether anything can happen in a state, be it without effect."""
        return bool(self.space.offsets[state + 1] > self.space.offsets[state])

    @staticmethod
    def _named(numbers: NDArray[np.int16], chosen: list[bool]) -> Bools:
        """Where the number (-1 for none) is that of a chosen entry."""
        table = np.array([*chosen, False], dtype=np.bool_)
        return np.asarray(table[numbers], dtype=np.bool_)


def _compared(condition: Condition) -> Iterator[int]:
    """The places that a condition holds against others."""
    for part in clauses(condition):
        if isinstance(part, Comparison) and len(part.terms) > 1:
            yield from (place for _, place in part.terms)

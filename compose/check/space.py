"""The state space: every marking that play can reach, and every move between them."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import ArrayLike, NDArray

from compose.check.encoding import Codes, Encoding
from compose.net.net import Net
from grammar.frozen import field, frozen

Ints = NDArray[np.int32]


KeepGoing = Callable[[str, int, int], bool]


def always(what: str, done: int, of: int) -> bool:
    """Goes on whatever is done: nobody watches and nobody stops it."""
    return True


@frozen
class Budget:
    """How far to go: at most about so many states, and megabytes of memory for them and all that is proved of them.

    Never seconds: the same game gets the same answer on a busy machine. The usual budget takes 10 to 15 s of a
    processor where it is used up (measured), and leaves room on a machine of 4 GB; every game of the library with
    its usual class is whole within a tenth of it. `keep_going` is asked between steps with what is done, how far it
    is and of how much (0 where that is not known); answering False stops cleanly, with what is known so far.
    """

    states: int = 2_000_000
    megabytes: float = 1_200.0
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


USUAL = Budget()


@frozen
class Happened:
    """What the effects of one transition or reaction ever did (see `effect.Act`)."""

    fired: bool
    changed: tuple[bool, ...]
    short: tuple[bool, ...]


@frozen(eq=False)
class StateSpace:
    """States numbered in the order of breadth-first discovery, 0 the start; edges sorted by source.

    Edges of state i are offsets[i] to offsets[i + 1]: `targets`, `transitions` (numbers in
    net.transitions) and `factors` (rate per minute = factor * constant of the transition). An edge
    back to its own state is kept: something may happen there, though no count changes.

    `end_of[i]` is the first end of net.ends that holds in state i, -1 for none; ends have no edges.
    `clash_of[i]` is a later end that holds there for another winner, -1 for none.
    `parents` and `by` give the edge that first found each state (-1 for the start): following them
    back is a shortest line of play. Only the first `expanded` states have their edges where the
    space is not `complete`; `stopped` is True where somebody stopped it. `chases` are
    (state, transition) pairs whose reactions never settled.
    """

    net: Net
    encoding: Encoding
    codes: Codes
    end_of: NDArray[np.int16]
    clash_of: NDArray[np.int16]
    parents: Ints
    by: Ints
    offsets: NDArray[np.int64]
    targets: Ints
    transitions: Ints
    factors: NDArray[np.float64]
    expanded: int
    happened: tuple[Happened, ...] = field(repr=False)
    reacted: tuple[Happened, ...] = field(repr=False)
    chases: tuple[tuple[int, int], ...] = ()
    stopped: bool = False

    @property
    def states(self) -> int:
        """How many states were found."""
        return len(self.codes)

    @property
    def edges(self) -> int:
        """How many edges were found, those back to their own state included."""
        return len(self.targets)

    @property
    def complete(self) -> bool:
        """True where every state was expanded, so that absence can be proved."""
        return self.expanded == self.states

    @property
    def unexpanded(self) -> int:
        """How many states were found but not looked into."""
        return self.states - self.expanded

    def ended(self) -> NDArray[np.bool_]:
        """Which states are ends, shape (states,)."""
        return np.greater_equal(self.end_of, 0)

    def sources(self) -> Ints:
        """The source of every edge, shape (edges,)."""
        return np.repeat(np.arange(self.states, dtype=np.int32), np.diff(self.offsets))

    def edges_from(self, state: int) -> range:
        """The numbers of the edges that leave a state."""
        return range(int(self.offsets[state]), int(self.offsets[state + 1]))


def markings(space: StateSpace, indices: ArrayLike) -> Ints:
    """The counts of the given states, shape (indices, places)."""
    return space.encoding.markings(space.codes[np.asarray(indices)])

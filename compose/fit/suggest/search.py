"""Best-first search for the smallest sets of modifiers that meet all wishes.

Sets of at most three modifiers of different names are tried, those first that miss least and change least. Quick
wishes are asked first; the check and the forecast only look at games that meet all of these. A game that two
sets make is looked at once.
"""

from __future__ import annotations

import heapq
import time
from collections.abc import Callable, Iterator, Sequence
from itertools import count

from attrs import define, field, frozen

from compose.fit.suggest.look import Looker
from compose.fit.suggest.played_wishes import Mended, NothingNew
from compose.fit.suggest.skeleton import skeleton
from compose.fit.suggest.wish import Wish
from compose.modifiers.apply import apply
from compose.modifiers.canonical import canonical_text
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Use
from grammar.game import Game

MOST_MODIFIERS = 3
LOOK_SECONDS = 2.0  # how long one game may be looked at
Progress = Callable[[int, int], None]


def silent(tried: int, found: int) -> None:
    """Nobody watches."""


@frozen
class Node:
    """A set of modifiers in the order applied, what they make, how many lines they changed, and each wish's gap
    (None where it was not asked because a quicker one is missed)."""

    uses: tuple[Use, ...]
    game: Game
    edits: int
    gaps: tuple[float | None, ...]

    @property
    def met(self) -> bool:
        """Whether every wish is met."""
        return all(gap == 0 for gap in self.gaps)

    @property
    def missed(self) -> int:
        """How many wishes are missed, as far as they were asked."""
        return sum(gap is not None and gap > 0 for gap in self.gaps)

    @property
    def gap(self) -> float:
        """By how much all wishes together are missed."""
        return sum(gap or 0.0 for gap in self.gaps)


@frozen
class Found:
    """What a search found: sets that meet all wishes, the nearest miss, and how much was tried.

    `whole` is True where every set of at most three was tried or ruled out: then there are no others.
    """

    base: Node
    solutions: tuple[Node, ...]
    nearest: Node
    tried: int
    whole: bool
    seconds: float


@define
class _Search:
    looker: Looker
    wishes: Sequence[Wish]
    moves: Sequence[Use]
    deadline: float
    wanted: int
    progress: Progress
    tried: int = 0
    seen: set[str] = field(factory=set)
    sets: set[frozenset[str]] = field(factory=set)
    refused: set[tuple[str, ...]] = field(factory=set)
    helped: dict[int, set[str]] = field(factory=dict)
    solutions: list[Node] = field(factory=list)

    def node(self, uses: tuple[Use, ...], game: Game, edits: int) -> Node:
        """The node with its gaps: quick wishes first, the others only where those are met."""
        gaps: list[float | None] = [None] * len(self.wishes)
        left = max(0.2, min(LOOK_SECONDS, self.deadline - time.perf_counter()))
        for quick in (True, False):
            if not quick and any(gap for gap in gaps):
                break
            for number, wish in enumerate(self.wishes):
                if wish.quick is quick:
                    gaps[number] = wish.gap(game, self.looker, left)
        return Node(uses, game, edits, tuple(gaps))

    def key(self, game: Game) -> str:
        """Games of one key are as good as each other: the same game, or nets of one shape where only that counts."""
        only_shape = all(isinstance(wish, Mended | NothingNew) for wish in self.wishes)
        return skeleton(game, self.looker.players(game)) if only_shape else canonical_text(game)

    def late(self) -> bool:
        return time.perf_counter() > self.deadline

    def children(self, parent: Node) -> Iterator[Node]:
        """The parent with one modifier more, those first that helped before with what the parent misses."""
        for move in sorted(self.moves, key=lambda use: self._rank(parent, use)):
            if self.late():
                return
            made = self._child(parent, move)
            if made is not None:
                yield made

    def _rank(self, parent: Node, use: Use) -> tuple[int, bool]:
        missed = [number for number, gap in enumerate(parent.gaps) if gap]
        helped = sum(use.label in self.helped.get(number, ()) for number in missed)
        return -helped, bool(use.values)

    def _child(self, parent: Node, move: Use) -> Node | None:
        names = [use.modifier.name for use in parent.uses]
        labels = frozenset((*(use.label for use in parent.uses), move.label))
        if move.modifier.name in names or labels in self.sets or any(clash(use, move) for use in parent.uses):
            return None
        outcome = apply(parent.game, move, self.looker.kit)
        if outcome.value is None:
            return None
        self.sets.add(labels)
        game, edits = outcome.value
        key = self.key(game)
        if not edits or key in self.seen:
            return None
        self.seen.add(key)
        self.tried += 1
        child = self.node((*parent.uses, move), game, parent.edits + len(edits))
        self._remember(parent, child, move)
        self.progress(self.tried, len(self.solutions))
        return child

    def _remember(self, parent: Node, child: Node, move: Use) -> None:
        for number, (before, after) in enumerate(zip(parent.gaps, child.gaps, strict=True)):
            if before and after is not None and after < before:
                self.helped.setdefault(number, set()).add(move.label)


def search(
    game: Game,
    wishes: Sequence[Wish],
    moves: Sequence[Use],
    looker: Looker,
    seconds: float = 10.0,
    wanted: int = 3,
    progress: Progress = silent,
) -> Found:
    """Sets of modifiers that meet all wishes, until so many are found, all were tried or time is up."""
    begun = time.perf_counter()
    work = _Search(looker, wishes, moves, begun + seconds, wanted, progress)
    base = work.node((), game, 0)
    work.seen.add(work.key(game))
    nearest, whole = _run(work, base)
    solutions = tuple(sorted(work.solutions, key=lambda node: (node.edits, len(node.uses))))
    return Found(base, solutions, nearest, work.tried, whole, time.perf_counter() - begun)


def _run(work: _Search, base: Node) -> tuple[Node, bool]:
    """Expand the most hopeful node first; the nearest miss, and whether nothing was left to expand."""
    order, number, nearest = list[tuple[tuple[float, ...], int, Node]](), count(), base
    if base.met:
        work.solutions.append(base)
        return base, True
    heapq.heappush(order, (_hope(base), next(number), base))
    while order and len(work.solutions) < work.wanted:
        parent = heapq.heappop(order)[2]
        for child in work.children(parent):
            nearest = min(nearest, child, key=_hope)
            if child.met:
                work.solutions.append(child)
                if len(work.solutions) >= work.wanted and (parent.uses or child.uses[-1].values):
                    return nearest, False
            elif len(child.uses) < MOST_MODIFIERS:
                heapq.heappush(order, (_hope(child), next(number), child))
        if work.late():
            return nearest, False
    return nearest, not order


def _hope(node: Node) -> tuple[float, ...]:
    """Nodes that miss fewer wishes, by less, with fewer changes come first."""
    return (float(node.missed), round(node.gap, 3), float(node.edits), float(len(node.uses)))

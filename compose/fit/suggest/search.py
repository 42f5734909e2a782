"""Best-first search for the smallest sets of modifiers that meet all wishes.

Sets of at most three modifiers of different names are tried, those first that miss least and change least. The
check looks only at games whose sheets meet the wishes, the forecast only at those that pass the check. A game that
two sets make is looked at once.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Hashable, Iterator, Sequence
from itertools import count

from attrs import define, field, frozen

from compose.check.space import KeepGoing, always
from compose.fit.suggest.look import Looker
from compose.fit.suggest.played_wishes import Mended, NothingNew
from compose.fit.suggest.promises import promises
from compose.fit.suggest.wish import COSTS, Wish
from compose.modifiers.apply import apply
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Use
from compose.modifiers.same_game import played_as
from grammar.game import Game

MOST_MODIFIERS = 3
Progress = Callable[[int, int], None]


def silent(tried: int, found: int) -> None:
    """Nobody watches."""


@frozen
class Reach:
    """How far a search goes: at most so many remixes and so many situations of all of them together, which takes 5
    to 15 s where both are used up (measured); `keep_going` may stop it before."""

    tries: int = 150
    situations: int = 2_000_000
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


@frozen
class Node:
    """A set of modifiers in the order applied, what they make, how many lines they changed, and each wish's gap
    (None where it was not asked because a cheaper one is missed)."""

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

    `whole` is True where every set of at most three was tried or ruled out: then there are no others. `situations`
    were looked at, of all remixes together.
    """

    base: Node
    solutions: tuple[Node, ...]
    nearest: Node
    tried: int
    whole: bool
    situations: int


@define
class _Search:
    looker: Looker
    wishes: Sequence[Wish]
    moves: Sequence[Use]
    reach: Reach
    wanted: int
    progress: Progress
    tried: int = 0
    seen: set[Hashable] = field(factory=set)
    sets: set[frozenset[str]] = field(factory=set)
    helped: dict[int, set[str]] = field(factory=dict)
    promised: set[tuple[str, int]] = field(factory=set)
    solutions: list[Node] = field(factory=list)

    def node(self, uses: tuple[Use, ...], game: Game, edits: int) -> Node:
        """The node with its gaps: wishes that cost more are asked only where all cheaper ones are met."""
        gaps: list[float | None] = [None] * len(self.wishes)
        for cost in COSTS:
            if any(gaps):
                break
            for number, wish in enumerate(self.wishes):
                if wish.cost == cost:
                    gaps[number] = wish.gap(game, self.looker)
        return Node(uses, game, edits, tuple(gaps))

    def key(self, game: Game) -> Hashable:
        """Games of one key are as good as each other: the same game, or nets of one shape where only that counts."""
        only_shape = all(isinstance(wish, Mended | NothingNew) for wish in self.wishes)
        return self.looker.shape(game) if only_shape else played_as(game)

    def late(self) -> bool:
        """Whether the search went as far as it may."""
        far = self.tried >= self.reach.tries or self.looker.situations >= self.reach.situations
        return far or not self.reach.keep_going("remixes tried", self.tried, 0)

    def children(self, parent: Node, hopeful: bool) -> Iterator[Node]:
        """The parent with one modifier more: the hopeful ones, or all others."""
        for move in self.moves:
            if self.late():
                return
            if self._hopeful(parent, move) is hopeful:
                made = self._child(parent, move)
                if made is not None:
                    yield made

    def _hopeful(self, parent: Node, use: Use) -> bool:
        """Whether a modifier helped before with what the parent misses, or promises to."""
        missed = [number for number, gap in enumerate(parent.gaps) if gap]
        return any(use.label in self.helped.get(number, ()) for number in missed) or any(
            (use.modifier.name, number) in self.promised for number in missed
        )

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
    reach: Reach | None = None,
    wanted: int = 3,
    progress: Progress = silent,
) -> Found:
    """Sets of modifiers that meet all wishes, until so many are found, all were tried or it went as far as it may."""
    work = _Search(looker, wishes, moves, reach or Reach(), wanted, progress)
    for number, wish in enumerate(wishes):
        work.promised |= {(use.modifier.name, number) for use in moves if promises(use.modifier, wish)}
    base = work.node((), game, 0)
    work.seen.add(work.key(game))
    nearest, whole = _run(work, base)
    solutions = tuple(sorted(work.solutions, key=lambda node: (node.edits, len(node.uses))))
    return Found(base, solutions, nearest, work.tried, whole, looker.situations)


def _run(work: _Search, base: Node) -> tuple[Node, bool]:
    """Expand the most hopeful node first; the nearest miss, and whether nothing was left to expand.

    Each node is expanded twice: with the hopeful modifiers, and later with the others. Of the game itself, which
    comes first, all single modifiers with their usual values are tried, so that the least change is not missed.
    """
    order, number, nearest = list[tuple[tuple[float, ...], int, Node, bool]](), count(), base
    if base.met:
        work.solutions.append(base)
        return base, True
    for hopeful in (True, False):
        heapq.heappush(order, ((0.0,), next(number), base, hopeful))
    while order and not (len(work.solutions) >= work.wanted and order[0][2].uses):
        _, _, parent, hopeful = heapq.heappop(order)
        for child in work.children(parent, hopeful):
            nearest = min(nearest, child, key=_hope)
            if child.met:
                work.solutions.append(child)
                if len(work.solutions) >= work.wanted and (parent.uses or child.uses[-1].values):
                    return nearest, False
            elif len(child.uses) < MOST_MODIFIERS:
                heapq.heappush(order, ((1.0, *_hope(child)), next(number), child, True))
                heapq.heappush(order, ((2.0, *_hope(child)), next(number), child, False))
        if work.late():
            return nearest, False
    return nearest, not order


def _hope(node: Node) -> tuple[float, ...]:
    """Nodes come first of which more was worth asking; then those that miss fewer wishes, by less; then those that
    change less."""
    asked = [gap for gap in node.gaps if gap is not None]
    unasked = len(node.gaps) - len(asked)
    return (float(unasked), float(node.missed), round(node.gap, 3), float(node.edits), float(len(node.uses)))

"""What a search has tried so far, and how far it may go."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice

from attrs import define, field, frozen

from compose.check.space import KeepGoing, always
from compose.fit.suggest.score import Scored, Uses
from compose.fit.suggest.side_by_side import Scoring

BATCH = 16  # our choice: sets scored before anybody asks whether to go on
LEAST_BATCH = 4  # our choice: as many as there may be cores
FINER = 24  # our choice: sets of the same modifiers with amounts between those tried
LEAST_CHANGE = (1, 1, 0, 0.0)  # one modifier, one line, no unusual amount
Proposing = Callable[[Sequence[Scored], Sequence[Uses]], Iterable[Uses]]
Progress = Callable[[int, Scored | None], None]


def silent(tried: int, best: Scored | None) -> None:
    """Nobody watches."""


@frozen
class Reach:
    """How far a search goes: at most about so many remixes, and so many situations of all of them together, to which
    the moves of rounds played count; `keep_going` may stop it before."""

    tries: int = 300
    situations: int = 2_000_000
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


@define
class Trying:
    """What a search has tried, and what it found so far; it scores more until it is over."""

    scoring: Scoring
    reach: Reach
    wanted: int
    progress: Progress
    tried: list[Scored] = field(factory=list)
    solutions: list[Scored] = field(factory=list)
    refused: list[Uses] = field(factory=list)
    sets: set[frozenset[str]] = field(factory=set)
    names: set[str] = field(factory=set)
    keys: set[int] = field(factory=set)
    shapes: dict[int, int] = field(factory=dict)
    moves: int = 0

    def late(self) -> bool:
        """Whether the search went as far as it may."""
        far = len(self.tried) > self.reach.tries or self.left() <= 0
        return far or not self.reach.keep_going("remixes tried", len(self.tried) - 1, 0)

    def left(self) -> int:
        """How many situations may still be looked at, or moves made."""
        return self.reach.situations - sum(self.shapes.values()) - self.moves

    def over(self) -> bool:
        """Whether it is late, or as many were found as are wanted and no other can change less."""
        found = self.solutions[: self.wanted]
        return self.late() or (len(found) >= self.wanted and found[-1].change <= LEAST_CHANGE)

    def batch(self) -> int:
        """How many to score before anybody asks again: fewer where a few more like those tried may be too many."""
        each = (self.reach.situations - self.left()) // len(self.tried) if self.tried else 0
        affordable = self.left() // each if each else BATCH
        return min(BATCH, self.reach.tries + 1 - len(self.tried), max(affordable, LEAST_BATCH))

    def enough(self, edits: int) -> bool:
        """Whether as many were found as are wanted, none of which changes more lines than so many."""
        found = self.solutions[: self.wanted]
        return len(found) >= self.wanted and found[-1].edits <= edits

    def new(self, uses: Uses) -> bool:
        """Whether a set, in whatever order, was not tried."""
        return _labels(uses) not in self.sets

    def score(self, sets: Iterable[Uses]) -> list[Scored]:
        """Those of the sets that make a game that was not seen before, scored; in batches, until it is late."""
        left, found = self._marked(sets), list[Scored]()
        while not self.over():
            batch = list(islice(left, self.batch()))
            if not batch:
                break
            for uses, each in zip(batch, self.scoring(batch), strict=True):
                if each is None:
                    self.refused.append(uses)
                elif self.keep(each):
                    found.append(each)
        return found

    def _marked(self, sets: Iterable[Uses]) -> Iterator[Uses]:
        for uses in sets:
            if self.new(uses):
                self.sets.add(_labels(uses))
                self.names.update(names_of(uses))
                yield uses

    def keep(self, each: Scored) -> bool:
        """Whether the game that a set makes was not seen before; then it counts."""
        if each.key in self.keys:
            return False
        self.keys.add(each.key)
        self.tried.append(each)
        if each.met:
            self.solutions = sorted([*self.solutions, each], key=lambda one: one.change)
        if each.shape:
            self.shapes[each.shape] = each.situations
        self.moves += each.moves
        self.progress(len(self.tried) - 1, self.solutions[0] if self.solutions else None)
        return True

    def finer(self, families: Iterable[tuple[str, ...]], proposing: Proposing) -> None:
        """Amounts between those tried, of modifiers of which no set does it yet."""
        left = dict.fromkeys(families, FINER)
        while left and not self.over():
            proposed = list[Uses]()
            for names in list(left):
                alike = [each for each in self.tried if each.names == names]
                refused = [uses for uses in self.refused if names_of(uses) == names]
                done = any(each.met for each in alike)
                new = [] if done else [uses for uses in proposing(alike, refused) if self.new(uses)][: left[names]]
                proposed += new
                left[names] -= len(new)
                if not new or left[names] <= 0:
                    del left[names]
            self.score(proposed)


def names_of(uses: Uses) -> tuple[str, ...]:
    """The names of the modifiers, in the order applied."""
    return tuple(use.modifier.name for use in uses)


def _labels(uses: Uses) -> frozenset[str]:
    return frozenset(use.label for use in uses)

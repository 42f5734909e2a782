"""The smallest sets of modifiers that meet all wishes, with the amounts that it takes.

First single modifiers: each at its usual, least and most amounts, then at those between where all wishes may be
met. Only where none of them does it, sets of two and three are looked at: first those that should do it if what each
does alone adds up, the least change first; then smaller ones of which each missed wish is helped or promised by one;
last, where nothing was found, all others, until it went as far as it may. A game that two sets make counts once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice

from attrs import define, field, frozen

from compose.check.space import KeepGoing, always
from compose.fit.suggest.amounts import at_the_ends_of, between, thresholds
from compose.fit.suggest.collecting import rarely_collected
from compose.fit.suggest.larger import Family, Larger, larger, together
from compose.fit.suggest.score import Scored, Scorer, Uses
from compose.fit.suggest.side_by_side import Scoring, one_by_one
from compose.modifiers.modifier import Use

MOST_MODIFIERS = 3
BATCH = 16  # our choice: sets scored before anybody asks whether to go on
FINER = 24  # our choice: sets of the same modifiers with amounts between those tried
TRUSTED = 3  # our choice: amounts of the same modifiers that should do it, tried before other modifiers are
CLOSELY = 8  # our choice: families that may do it tried with other amounts, of four times as many begun
Proposing = Callable[[Sequence[Scored], Sequence[Uses]], Iterable[Uses]]
Progress = Callable[[int, Scored | None], None]


def silent(tried: int, best: Scored | None) -> None:
    """Nobody watches."""


@frozen
class Reach:
    """How far a search goes: at most so many remixes and so many situations of all of them together; `keep_going`
    may stop it before."""

    tries: int = 300
    situations: int = 2_000_000
    keep_going: KeepGoing = field(default=always, eq=False, repr=False)


@frozen
class Found:
    """What a search found: sets that meet all wishes, the least change first; the nearest miss; for each wish the
    set that came nearest to it, and how much was tried.

    `whole` is True where nothing was found and every set of at most three was tried or ruled out. `situations` were
    looked at, of all remixes together.
    """

    base: Scored
    solutions: tuple[Scored, ...]
    nearest: Scored
    closest: tuple[Scored, ...]
    tried: int
    whole: bool
    situations: int


@define
class _Search:
    scoring: Scoring
    reach: Reach
    wanted: int
    progress: Progress
    tried: list[Scored] = field(factory=list)
    solutions: list[Scored] = field(factory=list)
    refused: list[Uses] = field(factory=list)
    sets: set[frozenset[str]] = field(factory=set)
    keys: set[int] = field(factory=set)
    shapes: dict[int, int] = field(factory=dict)

    def late(self) -> bool:
        """Whether the search went as far as it may."""
        far = len(self.tried) > self.reach.tries or sum(self.shapes.values()) >= self.reach.situations
        return far or not self.reach.keep_going("remixes tried", len(self.tried) - 1, 0)

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
        while not self.late():
            batch = list(islice(left, min(BATCH, self.reach.tries + 1 - len(self.tried))))
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
        self.progress(len(self.tried) - 1, self.solutions[0] if self.solutions else None)
        return True

    def finer(self, families: Iterable[tuple[str, ...]], proposing: Proposing) -> None:
        """Amounts between those tried, of modifiers of which no set does it yet."""
        left = dict.fromkeys(families, FINER)
        while left and not self.late():
            proposed = list[Uses]()
            for names in list(left):
                alike = [each for each in self.tried if each.names == names]
                refused = [uses for uses in self.refused if _names(uses) == names]
                done = any(each.met for each in alike)
                new = [] if done else [uses for uses in proposing(alike, refused) if self.new(uses)][: left[names]]
                proposed += new
                left[names] -= len(new)
                if not new or left[names] <= 0:
                    del left[names]
            self.score(proposed)


def _names(uses: Uses) -> tuple[str, ...]:
    return tuple(use.modifier.name for use in uses)


def _labels(uses: Uses) -> frozenset[str]:
    return frozenset(use.label for use in uses)


def search(
    scorer: Scorer,
    starts: Sequence[Use],
    reach: Reach | None = None,
    wanted: int = 3,
    progress: Progress = silent,
    scoring: Scoring | None = None,
) -> Found:
    """Sets of modifiers that meet all wishes of a scorer. `starts` are the modifiers, with amounts to begin with."""
    with rarely_collected():
        return _searched(_Search(scoring or one_by_one(scorer), reach or Reach(), wanted, progress), scorer, starts)


def _searched(work: _Search, scorer: Scorer, starts: Sequence[Use]) -> Found:
    base = scorer(())
    assert base is not None, "a game is scored as it is"
    work.keep(base)
    whole = base.met or _all_sizes(work, scorer, starts)
    nearest = min(work.tried, key=lambda each: each.hope)
    closest = tuple(_closest(work.tried, number) for number in range(len(scorer.wishes)))
    situations = sum(work.shapes.values())
    return Found(base, tuple(work.solutions), nearest, closest, len(work.tried) - 1, whole, situations)


def _all_sizes(work: _Search, scorer: Scorer, starts: Sequence[Use]) -> bool:
    """Sets of one, two and three; whether all of them were tried."""
    _singles(work, starts)
    blocked = [use for use in starts if not use.values and (use,) in work.refused]
    sizes = range(2, MOST_MODIFIERS + 1)
    for look in (_should, _may):
        for size in sizes:
            if not work.solutions or size < len(work.solutions[0].uses):
                look(work, larger(work.tried, blocked, scorer.wishes, size))
    for size in sizes:
        if not work.solutions:
            work.score(_others([each for each in work.tried if len(each.uses) == size - 1], starts))
    return not work.late() and not work.solutions


def _singles(work: _Search, starts: Sequence[Use]) -> None:
    """Single modifiers with their usual amounts; then other amounts of those that may change less than those found."""
    base, usual = work.tried[0], work.score((use,) for use in starts if not use.values)
    dear = {each.names for each in usual if work.enough(each.edits)}
    work.score((use,) for use in starts if use.values and _names((use,)) not in dear)
    alone = [each for each in dict.fromkeys(each.names for each in work.tried if each.uses) if each not in dear]
    work.finer(alone, lambda alike, refused: thresholds(alike, refused, base))
    work.finer(alone, between)


def _should(work: _Search, sets: Larger) -> None:
    """Sets that should meet all wishes, the least change first."""
    for some in _batched(sets.should, BATCH // 2):
        if work.enough(some[0][0].edits):
            return
        work.score(each.uses for family in some for each in family[:TRUSTED] if each.gap == 0)


def _may(work: _Search, sets: Larger) -> None:
    """Sets that may meet all wishes: the first of each family, and of those that come nearest other amounts, too."""
    begun = {each.names: each for each in work.score(family[0].uses for family in sets.may[: 4 * CLOSELY])}
    nearest = sorted(begun, key=lambda names: begun[names].hope)[:CLOSELY]
    work.score(uses for names in nearest for uses in at_the_ends_of(begun[names].uses))
    work.finer(nearest, between)


def _others(smaller: Sequence[Scored], starts: Sequence[Use]) -> Iterator[Uses]:
    for each in sorted(smaller, key=lambda one: one.hope):
        yield from ((*each.uses, use) for use in starts if together(each.uses, use))


def _batched(families: Sequence[Family], size: int) -> Iterator[Sequence[Family]]:
    return (families[first : first + size] for first in range(0, len(families), size))


def _closest(tried: Sequence[Scored], number: int) -> Scored:
    """The set that came nearest to a wish, the least change of those that came as near."""

    def gap(each: Scored) -> float:
        miss = each.misses[number]
        return miss.gap if miss is not None else float("inf")

    return min(tried, key=lambda each: (gap(each), each.change))


def in_the_way(found: Found) -> tuple[int, ...]:
    """The wishes that no set met, by number; where each was met by some set, those that the nearest misses."""
    never = [number for number, each in enumerate(found.closest) if not _meets(each, number) and _asked(found, number)]
    return tuple(never) or tuple(number for number in range(len(found.closest)) if not _meets(found.nearest, number))


def _meets(each: Scored, number: int) -> bool:
    miss = each.misses[number]
    return miss is not None and miss.met


def _asked(found: Found, number: int) -> bool:
    return found.closest[number].misses[number] is not None

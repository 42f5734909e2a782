"""The smallest sets of modifiers that meet all wishes, with the amounts that it takes.

First single modifiers: each at its usual, least and most amounts, then at those between where all wishes may be
met. Only where none of them does it, sets of two and three are looked at: first those that should do it if what each
does alone adds up, the least change first, and sets of four of which that is so; then smaller ones of which each missed
wish is helped or promised by one; last, where nothing was found, all others, until it went as far as it may. A game
that two sets make counts once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from attrs import frozen

from compose.fit.suggest.amounts import at_the_ends_of, between, thresholds
from compose.fit.suggest.class_wishes import asks_for_all
from compose.fit.suggest.collecting import rarely_collected
from compose.fit.suggest.larger import Family, Larger, idle, larger, promising, together
from compose.fit.suggest.score import Scored, Scorer, Uses
from compose.fit.suggest.side_by_side import Scoring, one_by_one
from compose.fit.suggest.trying import BATCH, Progress, Reach, Trying, names_of, silent
from compose.fit.suggest.wish import Wish
from compose.modifiers.modifier import Use

MOST_MODIFIERS = 3
MOST_THAT_ADD_UP = 4  # our choice: where what each does alone adds up to all that is asked
TRUSTED = 3  # our choice: amounts of the same modifiers that should do it, tried before other modifiers are
CLOSELY = 8  # our choice: families that may do it tried with other amounts, of four times as many begun


@frozen
class Found:
    """What a search found: sets that meet all wishes, the least change first; the nearest miss; for each wish the
    set that came nearest to it, and how much was tried.

    `whole` is True where nothing was found and every set of at most three was tried or ruled out. `situations` were
    looked at, of all remixes together, and `moves` made in rounds played of those too large. So many modifiers are
    `untried` since it went as far as it may.
    """

    base: Scored
    solutions: tuple[Scored, ...]
    nearest: Scored
    closest: tuple[Scored, ...]
    tried: int
    whole: bool
    situations: int
    moves: int = 0
    untried: int = 0


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
        return _searched(Trying(scoring or one_by_one(scorer), reach or Reach(), wanted, progress), scorer, starts)


def _searched(work: Trying, scorer: Scorer, starts: Sequence[Use]) -> Found:
    base = scorer(())
    assert base is not None, "a game is scored as it is"
    work.keep(base)
    whole = base.met or _all_sizes(work, scorer, starts)
    nearest = nearest_of(work.tried, scorer.wishes)
    closest = tuple(_closest(work.tried, number) for number in range(len(scorer.wishes)))
    situations, untried = sum(work.shapes.values()), len({use.modifier.name for use in starts} - work.names)
    solutions, untried = tuple(work.solutions), untried if work.late() else 0
    return Found(base, solutions, nearest, closest, len(work.tried) - 1, whole, situations, work.moves, untried)


def nearest_of(tried: Sequence[Scored], wishes: Sequence[Wish]) -> Scored:
    """The set that comes nearest to all wishes, of those that leave no more pupils out than the game as it is, which
    is tried first: nobody is served by a game that fits since some of them sit beside it."""
    numbers = [number for number, wish in enumerate(wishes) if asks_for_all(wish)]

    def gaps(each: Scored) -> list[float]:
        return [miss.gap if (miss := each.misses[number]) is not None else 0.0 for number in numbers]

    before = gaps(tried[0])
    fair = [each for each in tried if all(now <= was for now, was in zip(gaps(each), before, strict=True))]
    return min(fair, key=lambda each: each.hope)


def _all_sizes(work: Trying, scorer: Scorer, starts: Sequence[Use]) -> bool:
    """Sets of one, two and three; whether all of them were tried."""
    left = _singles(work, starts, scorer.wishes)
    blocked = [use for use in starts if not use.values and (use,) in work.refused]
    sizes = range(2, MOST_MODIFIERS + 1)
    for look, size in (*((_should, size) for size in (*sizes, MOST_THAT_ADD_UP)), *((_may, size) for size in sizes)):
        if not work.solutions or size < len(work.solutions[0].uses):
            look(work, larger(work.tried, blocked, scorer.wishes, size))
    if not work.solutions:
        work.score((use,) for use in left)
    for size in sizes:
        if not work.solutions:
            work.score(_others([each for each in work.tried if len(each.uses) == size - 1], starts))
    return not work.late() and not work.solutions


def _singles(work: Trying, starts: Sequence[Use], wishes: Sequence[Wish]) -> Sequence[Use]:
    """Single modifiers with their usual amounts, those that promise something first; then other amounts of those that
    may change less than those found, but for those that are beside the point, which come back."""
    base = work.tried[0]
    first = sorted((use for use in starts if not use.values), key=lambda use: not promising(use, base, wishes))
    usual = work.score((use,) for use in first)
    dear = {each.names for each in usual if work.enough(each.edits)}
    beside = idle(usual, base, wishes)
    further = [use for use in starts if use.values and names_of((use,)) not in dear]
    work.score((use,) for use in further if use.modifier.name not in beside)
    alone = [each for each in dict.fromkeys(each.names for each in work.tried if each.uses) if each not in dear]
    work.finer(alone, lambda alike, refused: thresholds(alike, refused, base))
    work.finer(alone, between)
    return [use for use in further if use.modifier.name in beside]


def _should(work: Trying, sets: Larger) -> None:
    """Sets that should meet all wishes, the least change first."""
    for some in _batched(sets.should, BATCH // 2):
        if work.enough(some[0][0].edits):
            return
        work.score(each.uses for family in some for each in family[:TRUSTED] if each.gap == 0)


def _may(work: Trying, sets: Larger) -> None:
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
    never = [number for number, each in enumerate(found.closest) if not _meets(each, number) and _asked(each, number)]
    nearest = found.nearest
    return tuple(never) or tuple(
        number for number in range(len(found.closest)) if not _meets(nearest, number) and _asked(nearest, number)
    )


def _meets(each: Scored, number: int) -> bool:
    miss = each.misses[number]
    return miss is not None and miss.met


def _asked(each: Scored, number: int) -> bool:
    return each.misses[number] is not None

"""Sets of several modifiers: which should do it, which may, by what each modifier does alone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from attrs import frozen

from compose.fit.suggest.promises import promises
from compose.fit.suggest.score import Change, Scored, Uses, change
from compose.fit.suggest.wish import SHEET, UNKNOWN_GAP, Wish
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Use

KEPT = 150  # our choice: sets that are made larger by one modifier
Gaps = tuple[float | None, ...]  # by how much each wish is missed; None where nobody can say


@frozen
class Guess:
    """A set of modifiers, how many lines it should change, and by how much it should miss each wish if what its
    modifiers do alone adds up, or how much it does where it was tried."""

    uses: Uses
    edits: int
    gaps: Gaps

    @property
    def gap(self) -> float:
        """By how much all wishes should be missed together, as far as anybody can say."""
        known = [gap for gap in self.gaps if gap is not None]
        return round(sum(known), 9) if known else UNKNOWN_GAP

    @property
    def order(self) -> tuple[float, Change]:
        """The nearest first, then the least change."""
        return self.gap, change(self.uses, self.edits)

    @property
    def names(self) -> frozenset[str]:
        """The names of its modifiers."""
        return frozenset(use.modifier.name for use in self.uses)


Family = tuple[Guess, ...]  # sets of the same modifiers with other amounts, the most hopeful first


@frozen
class Larger:
    """Families of sets of one size: those that should meet all wishes, the least change first, and those of which
    each missed wish is helped or promised by one modifier, the most hopeful first."""

    should: tuple[Family, ...]
    may: tuple[Family, ...]


def larger(tried: Sequence[Scored], blocked: Sequence[Use], wishes: Sequence[Wish], size: int) -> Larger:
    """The sets of so many modifiers that are worth a try after `tried`, which begins with the game as it is.
    `blocked` are modifiers that do not fit the game by themselves."""
    base, singles = tried[0], [each for each in tried if len(each.uses) == 1]
    known = {frozenset(use.label for use in each.uses): each for each in tried}
    alone = _distinct(singles)
    guesses = list(_pairs(base, alone, blocked, known))
    by_label = {each.uses[0].label: each.gap for each in alone}
    for _ in range(size - 2):
        near = sorted((each for each in guesses if _worth_it(each, by_label)), key=lambda each: each.order)[:KEPT]
        guesses = [found for parent in near for found in _with_one_more(base, parent, alone, blocked)]
    families: dict[frozenset[str], list[Guess]] = {}
    for guess in guesses:
        families.setdefault(guess.names, []).append(guess)
    ordered = [_hopeful_first(family) for family in families.values()]
    return Larger(
        tuple(sorted((family for family in ordered if family[0].gap == 0), key=lambda family: family[0].edits)),
        tuple(sorted(_hopeful(ordered, singles, base, blocked, wishes), key=lambda family: family[0].order)),
    )


def _hopeful_first(family: Sequence[Guess]) -> Family:
    return tuple(sorted(family, key=lambda each: each.order) if len(family) > 1 else family)


def together(uses: Uses, use: Use) -> bool:
    """Whether a modifier may be added to others: it is none of them, and none says that it does not go with it."""
    return all(each.modifier.name != use.modifier.name and not clash(each, use) for each in uses)


def _gaps(scored: Scored) -> Gaps:
    return tuple(miss.gap if miss is not None else None for miss in scored.misses)


def _distinct(scored: Sequence[Scored]) -> list[Guess]:
    """Of sets of the same modifiers that miss the same the one that changes least."""
    found: dict[object, Scored] = {}
    for each in scored:
        key = each.names, _gaps(each)
        if key not in found or each.change < found[key].change:
            found[key] = each
    return [Guess(each.uses, each.edits, _gaps(each)) for each in found.values()]


def _pairs(
    base: Scored, alone: Sequence[Guess], blocked: Sequence[Use], known: Mapping[frozenset[str], Scored]
) -> Iterator[Guess]:
    for number, one in enumerate(alone):
        for pair in _with_one_more(base, one, alone[number + 1 :], blocked):
            there = known.get(frozenset(use.label for use in pair.uses))
            yield pair if there is None else Guess(pair.uses, there.edits, _gaps(there))


def _with_one_more(base: Scored, parent: Guess, alone: Sequence[Guess], blocked: Sequence[Use]) -> Iterator[Guess]:
    before = _gaps(base)
    for single in alone:
        if together(parent.uses, single.uses[0]):
            gaps = tuple(map(_added_up, before, parent.gaps, single.gaps))
            yield Guess((*parent.uses, *single.uses), parent.edits + single.edits, gaps)
    for use in blocked:
        if together(parent.uses, use):
            yield Guess((*parent.uses, use), parent.edits + 1, (None,) * len(before))


def _added_up(before: float | None, one: float | None, other: float | None) -> float | None:
    if before is None or one is None or other is None:
        return None
    return max(0.0, one + other - before)


def _worth_it(some: Guess, alone: Mapping[str, float]) -> bool:
    """Whether a set comes nearer than each of its modifiers alone."""
    return all(some.gap < alone.get(use.label, UNKNOWN_GAP) for use in some.uses)


def idle(usual: Sequence[Scored], base: Scored, wishes: Sequence[Wish]) -> frozenset[str]:
    """Of the modifiers tried with their usual amounts those that leave each missed wish as it is and promise nothing
    for one: with other amounts they hardly help. None where a round has to be looked at to know."""
    missed = _missed(base)
    if any(wishes[number].cost != SHEET for number in missed):
        return frozenset()
    return frozenset(
        each.names[0]
        for each in usual
        if all(_gaps(each)[number] == _gaps(base)[number] for number in missed)
        and not promising(each.uses[0], base, wishes)
    )


def promising(use: Use, base: Scored, wishes: Sequence[Wish]) -> bool:
    """Whether a modifier promises something for a wish that the game misses."""
    return any(promises(use.modifier, wishes[number]) for number in _missed(base))


def _missed(base: Scored) -> set[int]:
    return {number for number, gap in enumerate(_gaps(base)) if gap}


def _hopeful(
    families: Iterable[Family],
    singles: Sequence[Scored],
    base: Scored,
    blocked: Sequence[Use],
    wishes: Sequence[Wish],
) -> Iterator[Family]:
    """Families of which each wish that the game misses is helped or promised by one modifier."""
    missed = _missed(base)
    moved: dict[str, set[int]] = {}
    for use in (*(each.uses[0] for each in singles), *blocked):
        if use.modifier.name not in moved:
            moved[use.modifier.name] = {number for number in missed if promises(use.modifier, wishes[number])}
    for each in singles:
        for number in missed:
            gap, before = _gaps(each)[number], _gaps(base)[number]
            if gap is not None and before is not None and gap < before:
                moved[each.names[0]].add(number)
    for family in families:
        if missed <= set().union(*(moved[name] for name in family[0].names)):
            yield family

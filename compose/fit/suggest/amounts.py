"""The amounts of a modifier that are worth a try, and which lie between two that were tried."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby, pairwise, product

from compose.fit.suggest.score import Scored, Uses
from compose.fit.suggest.wish import Miss
from compose.modifiers.modifier import Modifier, Takes, Use

STEPS = {"%": 5.0, "s": 5.0}  # our choice: finer than this no teacher measures; all else in whole numbers


def amounts(takes: Takes) -> tuple[float, ...]:
    """All amounts of a parameter, the least first; the usual one and both ends are among them."""
    step = STEPS.get(takes.usually.unit, 1.0)
    least, most = takes.least.value, takes.most.value
    there = {least + step * number for number in range(int((most - least) / step) + 1)}
    return tuple(sorted({*there, most, takes.usually.value}))


def everywhere(modifiers: Sequence[Modifier]) -> Iterator[Use]:
    """Every modifier with all its amounts."""
    for modifier in modifiers:
        yield from _grid(modifier, amounts)


def at_the_ends(modifiers: Sequence[Modifier]) -> tuple[Use, ...]:
    """Every modifier with its usual amounts; then all with their least and most."""
    found = [use for modifier in modifiers for use in _grid(modifier, _ends)]
    return tuple(sorted(found, key=lambda use: bool(use.values)))


def _ends(takes: Takes) -> tuple[float, ...]:
    return tuple(dict.fromkeys((takes.usually.value, takes.least.value, takes.most.value)))


def _grid(modifier: Modifier, values: Callable[[Takes], tuple[float, ...]]) -> Iterator[Use]:
    for chosen in product(*(values(each) for each in modifier.takes)):
        yield _use(modifier, chosen)


def _use(modifier: Modifier, chosen: Sequence[float]) -> Use:
    """The modifier with these amounts; usual ones are not named."""
    named = zip(modifier.takes, chosen, strict=True)
    given = {
        each.parameter: modifier.value(each.parameter, value) for each, value in named if value != each.usually.value
    }
    return Use(modifier, given)


def chosen(uses: Uses) -> tuple[float, ...]:
    """The amounts of all modifiers of a set, one after the other."""
    taken = ((use, each) for use in uses for each in use.modifier.takes)
    return tuple((use.values.get(each.parameter) or each.usually).value for use, each in taken)


def with_amounts(uses: Uses, values: Sequence[float]) -> Uses:
    """The same modifiers with other amounts."""
    left = iter(values)
    return tuple(_use(use.modifier, [next(left) for _ in use.modifier.takes]) for use in uses)


def at_the_ends_of(uses: Uses) -> Iterator[Uses]:
    """The same modifiers, one amount at its least, its usual and its most, the others as they are."""
    there = chosen(uses)
    for axis, each in enumerate(each for use in uses for each in use.modifier.takes):
        yield from (with_amounts(uses, (*there[:axis], value, *there[axis + 1 :])) for value in _ends(each))


def towards_usual(uses: Uses) -> Iterator[tuple[float, ...]]:
    """For each amount of a set those between the usual one and it, the usual one first."""
    takes = [each for use in uses for each in use.modifier.takes]
    for each, there in zip(takes, chosen(uses), strict=True):
        usual = each.usually.value
        between_them = [value for value in amounts(each) if min(usual, there) <= value <= max(usual, there)]
        yield tuple(sorted((value for value in between_them if value != there), key=lambda value: abs(value - usual)))


Point = tuple[float, ...]
Misses = Sequence[Miss | None]


def between(tried: Sequence[Scored], refused: Sequence[Uses]) -> Iterator[Uses]:
    """Sets of the same modifiers at an amount halfway between two that were tried, where all wishes may be met
    there: each is met at one of the two, or missed the other way, or nobody knows. With a refused set it may be.

    It is taken that one amount more or less moves every wish one way.
    """
    return _halfway(tried, refused, _all_may_be_met)


def thresholds(tried: Sequence[Scored], refused: Sequence[Uses], base: Scored) -> Iterator[Uses]:
    """Those halfway between two of which one meets a wish that the game misses and the other does not: in a larger
    set the others may do the rest."""
    missed = [number for number, miss in enumerate(base.misses) if miss is not None and not miss.met]

    def turns(one: Misses | None, other: Misses | None) -> bool:
        return any(_turns(_of(one, number), _of(other, number), base.misses[number]) for number in missed)

    return _halfway(tried, refused, turns)


def _halfway(
    tried: Sequence[Scored], refused: Sequence[Uses], worth: Callable[[Misses | None, Misses | None], bool]
) -> Iterator[Uses]:
    points: dict[Point, Misses | None] = {chosen(uses): None for uses in refused}
    points |= {chosen(each.uses): each.misses for each in tried}
    takes = [each for use in tried[0].uses for each in use.modifier.takes]
    for axis, each in enumerate(takes):
        for low, high in _neighbours(tuple(points), axis):
            within = [value for value in amounts(each) if low[axis] < value < high[axis]]
            if within and worth(points[low], points[high]):
                yield with_amounts(tried[0].uses, (*low[:axis], within[len(within) // 2], *low[axis + 1 :]))


def _neighbours(points: Sequence[Point], axis: int) -> Iterator[tuple[Point, Point]]:
    """Pairs that differ in one amount alone, with none tried between them."""

    def others(point: Point) -> Point:
        return (*point[:axis], *point[axis + 1 :])

    ordered = sorted(points, key=lambda point: (others(point), point[axis]))
    for _, line in groupby(ordered, others):
        yield from pairwise(line)


def _all_may_be_met(one: Misses | None, other: Misses | None) -> bool:
    if one is None or other is None:
        return one is not other
    return all(
        a is None or b is None or a.met or b.met or a.below is not b.below for a, b in zip(one, other, strict=True)
    )


def _of(misses: Misses | None, number: int) -> Miss | None:
    return misses[number] if misses is not None else None


def _turns(one: Miss | None, other: Miss | None, before: Miss | None) -> bool:
    """Whether a wish is met at one of two amounts alone, or missed there the other way; or where one of them is not
    known, whether the other comes nearer to it without meeting it."""
    if one is None or other is None:
        known = one or other
        return known is not None and before is not None and 0 < known.gap < before.gap
    return one.met is not other.met or (not one.met and one.below is not other.below)

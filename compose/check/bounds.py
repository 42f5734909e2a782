"""How many there can be in each place at least and at most, whatever happens: found without looking at situations.

Counts are kept as intervals, each widened to its end as soon as something that may happen moves it (P. Cousot and
R. Cousot, "Abstract interpretation", POPL 1977, from memory). What cannot be within them can never be, however many
situations there are; what can be within them may still never come.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.seen import Act
from compose.check.space import Happened
from compose.net.net import All, Assign, Comparison, Condition, Effect, Move, Net, Not, Rate, Room
from grammar.frozen import frozen


@frozen(eq=False)
class Bounds:
    """The least and the most of each place, and what each transition and reaction may do within them."""

    net: Net
    least: tuple[int, ...]
    most: tuple[int, ...]
    acts: tuple[tuple[Act, Happened], ...]

    def ever(self, condition: Condition) -> bool:
        """Whether a condition may hold."""
        return _may(condition, self.least, self.most)

    def fewest(self, place: int) -> int:
        """The least that a place can have."""
        return self.least[place]

    def still(self, place: int) -> bool:
        """Whether the count of a place never changes."""
        return self.least[place] == self.most[place]

    def is_full(self, room: Room, act: Act) -> bool:
        """Not known: what happens is not looked at one by one."""
        return False

    @property
    def live(self) -> Bounds:
        """Where the round goes on: the same, for ends are not told apart."""
        return self


def bounds(net: Net) -> Bounds:
    """The intervals of a net, from its start, until nothing widens them any more."""
    least, most = list(net.start()), list(net.start())
    while True:
        before = (tuple(least), tuple(most))
        acts: list[Act] = [each for each in net.transitions if _may(each.guard, *before) and _acts(each.rate, *before)]
        acts += [each for each in net.reactions if _may(each.guard, *before) and _may(each.only, *before)]
        for effect in (effect for act in acts for effect in act.effects):
            _widen(effect, net, least, most)
        if before == (tuple(least), tuple(most)):
            happening = set(map(id, acts))
            every: tuple[Act, ...] = (*net.transitions, *net.reactions)
            return Bounds(net, *before, tuple((act, _done(act, id(act) in happening, most)) for act in every))


def _done(act: Act, happens: bool, most: Sequence[int]) -> Happened:
    """What an act may do: of what it moves there has to be some."""
    changed = (happens and (not isinstance(each, Move) or most[each.source] > 0) for each in act.effects)
    return Happened(happens, tuple(changed), ())


def _widen(effect: Effect, net: Net, least: list[int], most: list[int]) -> None:
    if isinstance(effect, Assign):
        least[effect.place] = min(least[effect.place], effect.value)
        most[effect.place] = max(most[effect.place], effect.value)
    elif not isinstance(effect, Move):
        if effect.by > 0:
            most[effect.place] = net.places[effect.place].capacity
        elif effect.by < 0:
            least[effect.place] = 0
    elif most[effect.source] > 0 and effect.source != effect.target and effect.amount != 0:
        least[effect.source] = 0
        most[effect.target] = net.places[effect.target].capacity


def _acts(rate: Rate, least: Sequence[int], most: Sequence[int]) -> bool:
    """Whether a rate may be above 0."""
    needed = (*rate.limits, *(ratio.numerator for ratio in rate.ratios))
    free = rate.turns is None or rate.turns[0] > sum(least[place] for place in rate.turns[1])
    return free and all(any(most[place] for place in places) for places in needed)


def _may(condition: Condition, least: Sequence[int], most: Sequence[int], so: bool = True) -> bool:
    """Whether a condition may hold; whether it may fail where `so` is False."""
    if isinstance(condition, Not):
        return _may(condition.part, least, most, not so)
    if isinstance(condition, Comparison):
        return _may_compare(condition, least, most, so)
    together = all if isinstance(condition, All) == so else any
    return together(_may(part, least, most, so) for part in condition.parts)


def _may_compare(comparison: Comparison, least: Sequence[int], most: Sequence[int], so: bool) -> bool:
    ends = [sorted((times * least[place], times * most[place])) for times, place in comparison.terms]
    lowest, highest = sum(low for low, _ in ends), sum(high for _, high in ends)
    bound = comparison.bound
    if comparison.relation == "<=":
        return lowest <= bound if so else highest > bound
    if comparison.relation == ">=":
        return highest >= bound if so else lowest < bound
    return lowest <= bound <= highest if so else (lowest, highest) != (bound, bound)

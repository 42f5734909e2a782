"""Which rules hold when something happens: one case for each way in which their conditions can stand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.core.game import Play
from grammar.core.guards import ALWAYS, Guard
from grammar.core.play import ComeBack, Lines, PointsCount, Turn, Waiting
from grammar.core.precedence import Slot, goes_before, slots, written
from grammar.core.rules import Add, Effect, Go, Nothing, Rule
from grammar.core.values import Presence
from grammar.frozen import evolve, frozen


@frozen
class Case:
    """The effects that hold together, each with its rule; what must be so, and what must not.

    `besides` are the lines by which their points count more.
    """

    effects: tuple[tuple[Effect, Rule], ...]
    holds: tuple[Guard, ...]
    fails: tuple[Guard, ...]
    besides: tuple[Lines, ...] = ()

    @property
    def done(self) -> tuple[Effect, ...]:
        """The effects by themselves."""
        return tuple(effect for effect, _ in self.effects)

    @property
    def lines(self) -> tuple[Lines, ...]:
        """The lines with a part in it, in the order of the sheet."""
        return tuple(dict.fromkeys((*(rule.lines for _, rule in self.effects), *self.besides)))


def cases_of(play: Play, rules: Sequence[Rule]) -> Iterator[Case]:
    """All cases of rules that one happening fires; they shut each other out and leave nothing out."""
    for case in _split(tuple(rules), (), ()):
        yield from (_with_returns(each, play) for each in _counted(case, play.counting))


def _with_returns(case: Case, play: Play) -> Case:
    """With a point all return who waited for the next one, before anybody goes who will wait for another."""
    scored = next((rule for effect, rule in case.effects if isinstance(effect, Add) and effect.points > 0), None)
    backs = [each for each in play.services if isinstance(each, ComeBack) and each.after_s is None]
    if scored is None or not backs:
        return case
    returns = [(Go(Waiting(each.who, each.at, Turn.ALL), Presence.PLAYING), each.lines) for each in backs]
    done = tuple((go, Rule(scored.trigger, ALWAYS, (go,), lines)) for go, lines in returns)
    return Case((*done, *case.effects), case.holds, case.fails, case.besides)


def _counted(case: Case, counting: Sequence[PointsCount]) -> Iterator[Case]:
    """A case in which points are won, as often as they may count: once, double; or no more."""
    if not counting:
        yield case
        return
    first, rest = counting[0], counting[1:]
    if not any(isinstance(effect, Add) and (effect.points > 0 or not first.times) for effect, _ in case.effects):
        yield from _counted(case, rest)
        return
    if first.guard not in case.fails:
        kept = (each for each in case.effects if first.times or not isinstance(each[0], Add))
        effects = tuple((_times(effect, first.times), rule) for effect, rule in kept)
        holds = case.holds if first.guard in (*case.holds, ALWAYS) else (*case.holds, first.guard)
        yield from _counted(Case(effects, holds, case.fails, (*case.besides, first.lines)), rest)
    if first.guard not in (*case.holds, ALWAYS):
        fails = case.fails if first.guard in case.fails else (*case.fails, first.guard)
        yield from _counted(Case(case.effects, case.holds, fails, case.besides), rest)


def _times(effect: Effect, times: int) -> Effect:
    return evolve(effect, points=effect.points * times) if isinstance(effect, Add) and effect.points > 0 else effect


def _split(rules: tuple[Rule, ...], holds: tuple[Guard, ...], fails: tuple[Guard, ...]) -> Iterator[Case]:
    """Decide the conditions one by one, but only those on which something still depends."""
    open_ones = [rule for rule in rules if rule.guard != ALWAYS and rule.guard not in (*holds, *fails)]
    sure = [rule for rule in rules if rule.guard == ALWAYS or rule.guard in holds]
    undecided = next((rule for rule in open_ones if _counts(rule, sure)), None)
    if undecided is None:
        yield Case(_winning(sure), holds, fails)
        return
    yield from _split(rules, (*holds, undecided.guard), fails)
    yield from _split(rules, holds, (*fails, undecided.guard))


def _counts(rule: Rule, sure: list[Rule]) -> bool:
    """Whether a rule would change anything beside those that hold."""
    return any(not any(slot in _bars(other, rule) and _before(other, rule) for other in sure) for slot in written(rule))


def _bars(other: Rule, rule: Rule) -> frozenset[Slot]:
    """What the first writes instead of the second: where nothing follows, what is taken for granted holds still."""
    if not rule.granted:
        return written(other)
    return frozenset(slot for effect in other.effects if not isinstance(effect, Nothing) for slot in slots(effect))


def _before(one: Rule, other: Rule) -> bool:
    """Whether the first goes before the second; of equals the one that stands first."""
    decided = goes_before(one, other)
    return one.lines <= other.lines if decided is None else decided


def _winning(rules: list[Rule]) -> tuple[tuple[Effect, Rule], ...]:
    """The effects whose slots no rule writes that goes before theirs; that nothing follows writes nothing itself."""
    left = [[effect for effect in rule.effects if not _spared(effect, rule, rules)] for rule in rules]
    kept = [frozenset(slot for each in effects for slot in _slots(each)) for effects in left]
    found = []
    for effects, rule in zip(left, rules, strict=True):
        others = (each for each in zip(rules, kept, strict=True) if each[0] is not rule and each[0].lines != rule.lines)
        rivals = [writes for other, writes in others if _before(other, rule)]
        found += [(each, rule) for each in effects if not any(set(_slots(each)) & writes for writes in rivals)]
    return tuple(found)


def _slots(effect: Effect) -> tuple[Slot, ...]:
    return () if isinstance(effect, Nothing) else slots(effect)


def _spared(effect: Effect, rule: Rule, rules: list[Rule]) -> bool:
    """Whether a line by which nothing follows goes before; what is taken for granted holds all the same."""
    if rule.granted:
        return False
    before = (other for other in rules if other.lines != rule.lines and goes_before(other, rule))
    nothing = (each.instead_of for other in before for each in other.effects if isinstance(each, Nothing))
    return any(not those.isdisjoint(_slots(effect)) for those in nothing)

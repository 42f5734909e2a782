"""The moments of the clock of which a game speaks, and what they bring into play."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from grammar.core.clock import AtTime, ComeIn
from grammar.core.ends import Most
from grammar.core.game import Play
from grammar.core.guards import Clock, Count, Guard, counts_in
from grammar.core.play import Lines
from grammar.core.rules import Becomes, Rule
from grammar.core.values import KindId


def moments_s(play: Play) -> tuple[Fraction, ...]:
    """All moments at which anything changes, in their order: what comes again up to the end of the clock.

    Where play goes on from a level score, the end of the clock is the last of them.

    Where no clock ends the round, what comes again is counted up to the last of the others.
    """
    once = {at_s for guard, _ in guards_of(play) for at_s in _asked(guard)}
    once |= {rule.trigger.at_s for rule in play.rules if isinstance(rule.trigger, AtTime) and not rule.trigger.again}
    latest = play.bell.after_s if play.bell is not None else max(once, default=Fraction(0))
    found = once | {
        rule.trigger.at_s * number
        for rule in play.rules
        if isinstance(rule.trigger, AtTime) and rule.trigger.again
        for number in range(1, int(latest / rule.trigger.at_s) + 1)
    }
    before = tuple(sorted(at_s for at_s in found if play.bell is None or at_s < play.bell.after_s))
    return (*before, play.bell.after_s) if play.bell is not None and play.bell.goes_on else before


def again_s(play: Play) -> Fraction | None:
    """After how long what comes again does so where no clock ends the round; None where nothing goes on so."""
    return None if play.bell is not None else next(iter(sorted(every_s(play))), None)


def every_s(play: Play) -> frozenset[Fraction]:
    """After how long each thing that comes again does so."""
    triggers = (rule.trigger for rule in play.rules)
    return frozenset(each.at_s for each in triggers if isinstance(each, AtTime) and each.again)


def held_back(play: Play, kind: KindId) -> int:
    """How many balls of a kind the teacher has at the start, for they come in later."""
    return sum(
        effect.count * _times(play, rule)
        for rule in play.rules
        for effect in rule.effects
        if isinstance(effect, ComeIn) and kind in effect.balls and effect.count is not None
    )


def _times(play: Play, rule: Rule) -> int:
    trigger = rule.trigger
    assert isinstance(trigger, AtTime)
    if not trigger.again or play.bell is None:
        return 1
    return sum(at_s % trigger.at_s == 0 for at_s in moments_s(play) if at_s < play.bell.after_s)


def lines_at(play: Play, at_s: Fraction) -> Iterator[Lines]:
    """The lines that speak of a moment of the clock."""
    yield from (rule.lines for rule in play.rules if isinstance(rule.trigger, AtTime) and falls_on(rule.trigger, at_s))
    yield from (lines for guard, lines in guards_of(play) if at_s in _asked(guard))


def falls_on(trigger: AtTime, at_s: Fraction) -> bool:
    """Whether something happens at a moment."""
    return at_s % trigger.at_s == 0 if trigger.again else at_s == trigger.at_s


def guards_of(play: Play) -> Iterator[tuple[Guard, Lines]]:
    """Everything that anything hangs on, with the lines that say so."""
    yield from ((rule.guard, rule.lines) for rule in play.rules)
    yield from ((rule.trigger.guard, rule.lines) for rule in play.rules if isinstance(rule.trigger, Becomes))
    yield from ((offer.only, offer.lines) for offer in play.offers)
    yield from ((end.guard, end.lines) for end in play.ends)
    yield from ((each.guard, each.lines) for each in play.counting)


def compared(play: Play) -> Iterator[tuple[Count, Lines]]:
    """What an end or the bell counts of each side, whoever has most of it winning, with the lines that say so."""
    for end in (*play.ends, *((play.bell,) if play.bell is not None else ())):
        for verdict in end.verdicts:
            if isinstance(verdict, Most):
                yield from ((count, end.lines) for _, count in verdict.counts)


def _asked(guard: Guard) -> Iterator[Fraction]:
    return (count.at_s for count in counts_in(guard) if isinstance(count, Clock))

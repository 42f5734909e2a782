"""Ends, the clock, and how far points are counted."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from compose.net.lower.builder import Builder
from compose.net.lower.guards import condition_of, terms_of
from compose.net.lower.tokens import POINTS_COUNTED_TO, clock_place
from compose.net.net import All, AtTheEnd, Bell, Comparison, Condition, End, Rule, Terms
from compose.net.told import Because, Cause, Ended, TimeUp
from grammar.core import ends as core
from grammar.core.ends import Best, Deciding, Left, Lost, Most, NextKnocked, NoWinner, Verdict, Won
from grammar.core.game import Play
from grammar.core.guards import Ahead, Compare, Count, Guard, Points
from grammar.core.rules import Becomes, Finish
from grammar.core.values import SideId


def points_counted_to(play: Play) -> int:
    """How far points matter: as far as any line asks for them.

    Where points end no round, a fixed bound stands for "however many".
    """
    ending = [bound for end in play.ends for bound in _points_asked(end.guard)]
    asked = [bound for rule in play.rules for bound in _points_asked(rule.guard)]
    asked += [b for r in play.rules if isinstance(r.trigger, Becomes) for b in _points_asked(r.trigger.guard)]
    asked += [bound for each in play.counting for bound in _points_asked(each.guard)]
    asked += [bound for offer in play.offers for bound in _points_asked(offer.only)]
    every: list[int] = [*ending, *asked, *([] if ending else [POINTS_COUNTED_TO])]
    return max(every)


def _points_asked(guard: Guard) -> Iterator[int]:
    if isinstance(guard, Compare):
        if isinstance(guard.count, Points) and isinstance(guard.bound, int):
            yield guard.bound
        return
    if isinstance(guard, Ahead):
        return
    for part in guard.parts:
        yield from _points_asked(part)


def lower_ends(builder: Builder) -> tuple[End, ...]:
    """All ends in the order of the sheet; a result that a rule gives at once comes first."""
    wins = [each for end in builder.play.ends for each in _end(builder, end.guard, end.verdicts, end.lines)]
    tied = list(_both_at_once(builder, wins))
    return (*tied, *_at_once(builder), *wins, *_after_the_clock(builder))


def _after_the_clock(builder: Builder) -> Iterator[End]:
    """Where a level score is played on: whoever leads when the time is over, or then comes to lead."""
    bell = builder.play.bell
    if bell is None or not bell.goes_on:
        return
    over = Comparison(((1, clock_place(builder)),), "==", len(builder.times_s))
    for verdict in bell.verdicts[:-1]:
        yield from _results(builder, verdict, over, builder.rule(bell.lines), Cause.OVER_OR_NEXT)


def _at_once(builder: Builder) -> Iterator[End]:
    if builder.result_place is None:
        return
    for number, side in enumerate(builder.play.side_ids, start=1):
        giving = [rule for rule in builder.play.rules for effect in rule.effects if effect == Finish(side)] or [
            rule for rule in builder.play.rules for effect in rule.effects if isinstance(effect, Finish)
        ]
        guard = Comparison(((1, builder.result_place),), "==", number)
        yield _won(Won(side), side, guard, builder.rule(giving[0].lines), Cause.RULE)


def _end(builder: Builder, guard: Guard, verdicts: tuple[Verdict, ...], lines: tuple[int, ...]) -> Iterator[End]:
    held, rule = condition_of(builder, guard), builder.rule(lines)
    for verdict in verdicts:
        yield from _results(builder, verdict, held, rule, guard)


def _both_at_once(builder: Builder, wins: list[End]) -> Iterator[End]:
    tie = builder.play.tie
    if tie is None:
        return
    rule = builder.rule(tie.lines)
    for number, first in enumerate(wins):
        for second in wins[number + 1 :]:
            if first.winner and second.winner and first.winner != second.winner:
                both = All((first.guard, second.guard))
                yield from _results(builder, tie.verdict, both, rule, Cause.BOTH_AT_ONCE)


def _results(builder: Builder, verdict: Verdict, held: Condition, rule: Rule, because: Because) -> Iterator[End]:
    """The ends that a verdict gives where `held` holds."""
    match verdict:
        case Won() | Best() | Left():
            yield _won(verdict, verdict.side, held, rule, because)
        case Deciding() | NextKnocked():
            return
        case NoWinner() | Lost():
            yield End(Ended(verdict, because), None, held, rule, verdict is not NoWinner.DRAW)
        case Most():
            for side in builder.play.side_ids:
                yield _won(verdict, side, All((held, _more(builder, verdict, side))), rule, because)
        case _:
            assert_never(verdict)


def _won(verdict: Verdict, side: SideId, held: Condition, rule: Rule, because: Because) -> End:
    return End(Ended(verdict, because, side), side.key, held, rule)


def _more(builder: Builder, verdict: Most, side: SideId) -> Condition:
    sign = 1 if verdict.more else -1
    counts = dict(verdict.counts)
    own = _compared(builder, counts[side])
    parts = []
    for other in builder.play.others(side):
        against = _compared(builder, counts[other])
        terms = [(sign * each, place) for each, place in own] + [(-sign * each, place) for each, place in against]
        parts.append(Comparison(tuple(terms), ">=", 1))
    return All(tuple(parts))


def _compared(builder: Builder, count: Count) -> Terms:
    return _score_of(builder, count.side) if isinstance(count, Points) else terms_of(builder, count)


def lower_end_points(builder: Builder) -> tuple[AtTheEnd, ...]:
    """What counts for each side when the round is over."""
    return tuple(
        AtTheEnd(each.side.key, terms_of(builder, each.count, each.each), builder.rule(each.lines))
        for each in builder.play.end_points
    )


def _score_of(builder: Builder, side: SideId) -> Terms:
    """The points that a side has scored, and those of what it has when the round is over."""
    scored = builder.number(("points", side))
    counted = (each.terms for each in lower_end_points(builder) if each.side == side.key)
    return sum(counted, () if scored is None else ((1, scored),))


def lower_bell(builder: Builder) -> Bell | None:
    """The clock of the game, where it has one."""
    bell = builder.play.bell
    if bell is None or bell.goes_on:
        return None
    rule = builder.rule(bell.lines)
    return Bell(float(bell.after_s), tuple(_of_bell(builder, bell, rule)), rule)


def _of_bell(builder: Builder, bell: core.Bell, rule: Rule) -> Iterator[End]:
    times = len(builder.times_s)
    rings = All() if not times else All((Comparison(((1, clock_place(builder)),), "==", times),))
    for verdict in bell.verdicts:
        yield from _results(builder, verdict, rings, rule, TimeUp(bell.after_s))

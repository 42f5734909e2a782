"""The clock while play goes on → a place that counts its moments, and what happens at each of them.

For what is proved they come in their order, but at any moment that play allows; when they come is for the forecast.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from math import prod

from compose.net.lower.attempts import case_guard
from compose.net.lower.builder import Builder, by_itself
from compose.net.lower.cast import Cast, casts
from compose.net.lower.consequences import counted
from compose.net.lower.dispatch import Case, cases_of
from compose.net.lower.level import time_is_over
from compose.net.lower.own_ground import own_part
from compose.net.lower.services import act
from compose.net.lower.tokens import ball_place, clock_place, how_many, store_place
from compose.net.net import All, Assign, Comparison, Effect, Move, Rate, Rule, Transition
from compose.net.outcome import Moment
from compose.net.schedule import Schedule
from compose.net.told import Ticked
from grammar.core.clock import AtTime, ComeIn
from grammar.core.rules import Rule as CoreRule
from grammar.core.schedule import again_s, falls_on, lines_at
from grammar.core.values import KindId
from grammar.frozen import frozen


@frozen
class Tick:
    """A moment of the clock: when, how many have passed before, whether it comes over and over again."""

    at_s: Fraction
    passed: int
    counted: bool


def lower_ticks(builder: Builder) -> Schedule | None:
    """What happens at every moment of the clock of which the sheet speaks."""
    times, again = builder.times_s, again_s(builder.play)
    if not times and again is None:
        return None
    place = clock_place(builder)
    ticks = [Tick(at_s, passed, True) for passed, at_s in enumerate(times)]
    if again is not None:
        ticks.append(Tick(again, len(times), False))
    for tick in ticks:
        over = builder.play.bell is not None and tick.at_s == builder.play.bell.after_s
        builder.transitions.extend(time_is_over(builder, place, tick.passed) if over else _ticked(builder, place, tick))
    return Schedule(place, tuple(float(at_s) for at_s in times), float(again) if again is not None else None)


def _ticked(builder: Builder, place: int, tick: Tick) -> Iterator[Transition]:
    """Rules of one moment are all asked how things stood before it; several lines of the same time are one event."""
    groups: dict[AtTime, list[CoreRule]] = {}
    for rule in builder.play.rules:
        if isinstance(rule.trigger, AtTime) and _falls_on(rule.trigger, tick):
            groups.setdefault(rule.trigger, []).append(rule)
    moment = Moment(builder.play.populations()[0], None, builder.play.side_ids[0])
    for cases in product(*(list(cases_of(builder.play, rules)) for rules in groups.values())):
        case = _together(cases)
        effects = [effect for effect, _ in case.effects]
        for cast in casts(builder, moment, effects):
            firsts = [range(_turns(builder, effect)) for effect in effects if isinstance(effect, ComeIn)]
            for first in product(*firsts):
                yield _transition(builder, place, tick, case, cast, first, 1 / prod(len(turns) for turns in firsts))


def _falls_on(trigger: AtTime, tick: Tick) -> bool:
    if not tick.counted:
        return trigger.again
    return falls_on(trigger, tick.at_s)


def _together(cases: Sequence[Case]) -> Case:
    """Cases of several events that come at one moment."""
    return Case(
        tuple(each for case in cases for each in case.effects),
        tuple(dict.fromkeys(guard for case in cases for guard in case.holds)),
        tuple(dict.fromkeys(guard for case in cases for guard in case.fails)),
        tuple(dict.fromkeys(lines for case in cases for lines in case.besides)),
    )


def _transition(
    builder: Builder, place: int, tick: Tick, case: Case, cast: Cast, first: Sequence[int], part: float
) -> Transition:
    lines = next(lines_at(builder.play, tick.at_s))
    clock = by_itself(builder.core.lines[lines[0]].span)  # that time passes is no effect of a line
    passed: tuple[Effect, ...] = (Assign(place, tick.passed + 1, clock),) if tick.counted else ()
    return Transition(
        Ticked(tick.at_s, not tick.counted, case.done),
        None,
        True,
        act(builder, "wait", lines, None),
        "always",
        Rate((), cast.share),
        All((Comparison(((1, place),), "==", tick.passed), *case_guard(builder, case), *cast.guard)),
        (*passed, *_effects(builder, case, cast, first)),
        tuple(builder.rule(each) for each in case.lines),
        part=part,
        ticks=True,
    )


def _effects(builder: Builder, case: Case, cast: Cast, first: Sequence[int]) -> Iterator[Effect]:
    """What happens at a moment; `first` says to which side each ball that comes in is dealt first."""
    begin = iter(first)
    for effect, rule in case.effects:
        if isinstance(effect, ComeIn):
            turn = next(begin)
            for kind in sorted(effect.balls):
                yield from _dealt(builder, kind, effect.count, turn, builder.rule(rule.lines))
        else:
            yield from counted(builder, effect, None, cast.persons, builder.rule(rule.lines))


def _dealt(builder: Builder, kind: KindId, count: int | None, first: int, rule: Rule) -> Iterator[Move]:
    """Balls come in one by one, to each side in turn."""
    parts = [ball_place(builder, kind, own_part(builder.play, side)) for side in builder.play.side_ids]
    number = how_many(builder, kind) if count is None else count
    if len(set(parts)) == 1:
        yield Move(store_place(builder, kind), parts[0], number, rule)
        return
    shares = [len(range((turn - first) % len(parts), number, len(parts))) for turn in range(len(parts))]
    if count is not None:
        yield from (
            Move(store_place(builder, kind), part, share, rule)
            for part, share in zip(parts, shares, strict=True)
            if share
        )
        return
    for turn in range(number):
        yield Move(store_place(builder, kind), parts[(first + turn) % len(parts)], 1, rule)


def _turns(builder: Builder, effect: ComeIn) -> int:
    """How many sides could be dealt the first of the balls that come in, where that matters."""
    sides = len({own_part(builder.play, side) for side in builder.play.side_ids})
    return 1 if effect.count is not None and effect.count % sides == 0 else sides

"""Which rule counts where several write the same: by what each effect writes.

Rules that write different slots all hold. For one slot a rule of the sheet goes before one taken for granted, the
narrower trigger before the wider, one with a condition before one without, and of those with conditions the first
of the sheet whose condition holds. Two equally narrow ones without a condition that write the same are a mistake.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import Enum
from fractions import Fraction
from functools import cache
from math import ceil

from grammar.core.clock import ComeIn, TakeAway, TakeEffect
from grammar.core.fouls import Fouled
from grammar.core.guards import ALWAYS
from grammar.core.lives import LastLife
from grammar.core.loads import SetDown
from grammar.core.persons import nothing_follows
from grammar.core.rules import (
    Add,
    AllPlaying,
    Effect,
    Finish,
    Go,
    Happening,
    KeptFor,
    LifeOf,
    Nothing,
    Own,
    Person,
    PlayOn,
    Put,
    PutOnStep,
    Rest,
    Rule,
    SendBall,
    SendBalls,
    Shift,
    StartAgain,
    Swap,
    Trigger,
)
from grammar.core.sets import StandAgain
from grammar.core.values import KindId, SideId, Skill


class Written(Enum):
    """What an effect writes, where it needs no more than its name."""

    THING = "the thing of the event"
    BALL = "the ball of the event"
    RESULT = "who has won"
    EVERYTHING = "everything"


Slot = Written | Person | tuple[str, object] | SideId


def slots(effect: Effect) -> tuple[Slot, ...]:
    """All that an effect writes."""
    match effect:
        case Put() | Own() | Shift() | PutOnStep():
            return (Written.THING,)
        case StandAgain():
            return tuple(("down", thing) for thing in sorted(effect.things, key=repr))
        case SendBall():
            return (Written.BALL,)
        case SendBalls() | ComeIn() | TakeAway():
            return tuple(("balls", ball) for ball in sorted(effect.balls))
        case Add():
            return (("more points", effect.side),) if effect.more else (effect.side,)
        case TakeEffect():
            return (("line", effect.line),)
        case Finish():
            return (Written.RESULT,)
        case StartAgain():
            return (Written.EVERYTHING,)
        case Nothing():
            return tuple(sorted(effect.instead_of, key=repr))  # type: ignore[arg-type]
        case PlayOn.PLAY_ON:
            return (Person.OBJECT, ("lives", Person.OBJECT))
        case PlayOn.LESS_A_LIFE:
            return (Person.OBJECT,)
        case SetDown():
            return (("load", Person.OBJECT),)
        case LifeOf():
            return (("lives", effect.who),)
        case Go():
            return (_mover(effect.who),)
        case Swap():
            return (_mover(effect.who), _mover(effect.other))


def _mover(who: object) -> Slot:
    if isinstance(who, Person):
        return who
    if isinstance(who, AllPlaying):
        return ("playing", who.who)
    return ("waiting", who)


def written(rule: Rule) -> frozenset[Slot]:
    """All slots of a rule."""
    return frozenset(slot for effect in rule.effects for slot in slots(effect))


@cache
def _farther(from_m: Fraction | None) -> frozenset[object]:
    """The distances from there on, in decimetres up to the length of any hall; none where any will do."""
    return frozenset() if from_m is None else frozenset(range(ceil(from_m * 10), 1001))


def _sets(trigger: Trigger) -> tuple[frozenset[object], ...]:
    match trigger:
        case Happening():
            return (
                frozenset(trigger.by),
                frozenset(trigger.skills),
                frozenset(trigger.balls),
                frozenset(trigger.against),
                frozenset(trigger.to),
                frozenset(trigger.at),
                frozenset(trigger.whence),
                frozenset({"bounced"} if trigger.bounced else ()),
                _farther(trigger.from_m),
                frozenset(trigger.holding),
                frozenset(trigger.reaching),
            )
        case Fouled():
            return (frozenset(trigger.who), frozenset(trigger.against))
        case LastLife():
            return (frozenset(trigger.who),)
        case KeptFor():
            return (frozenset(trigger.who), frozenset(trigger.balls))
    return (frozenset({trigger}),)


def same_kind(one: Trigger, other: Trigger) -> bool:
    """Whether both wait for the same sort of thing to happen."""
    if isinstance(one, Happening) and isinstance(other, Happening):
        return one.result is other.result
    return type(one) is type(other)


def overlap(one: Trigger, other: Trigger) -> bool:
    """Whether one happening can fire both. An empty set stands for anything."""
    return same_kind(one, other) and all(
        not mine or not its or mine & its for mine, its in zip(_sets(one), _sets(other), strict=True)
    )


def narrower(one: Trigger, other: Trigger) -> bool:
    """Whether all that fires the first fires the second, and not the other way round."""
    pairs = list(zip(_sets(one), _sets(other), strict=True))
    return all(_within(mine, its) for mine, its in pairs) and not all(_within(its, mine) for mine, its in pairs)


def _within(inner: frozenset[object], outer: frozenset[object]) -> bool:
    return not outer or (bool(inner) and inner <= outer)


def _named(trigger: Trigger) -> int:
    return trigger.named if isinstance(trigger, Happening) else 0


def goes_before(one: Rule, other: Rule) -> bool | None:
    """Whether the first is asked before the second; None where nothing but the order of the sheet decides."""
    if one.granted != other.granted:
        return other.granted
    if narrower(one.trigger, other.trigger):
        return True
    if narrower(other.trigger, one.trigger):
        return False
    if _named(one.trigger) != _named(other.trigger):
        return _named(one.trigger) > _named(other.trigger)
    if (one.guard == ALWAYS) != (other.guard == ALWAYS):
        return other.guard == ALWAYS
    return None


def in_order(rules: Iterable[Rule]) -> tuple[Rule, ...]:
    """Rules in the order in which they are asked: those of the sheet as they come, but for what goes before."""
    found: list[Rule] = []
    for rule in rules:
        at = next((n for n, each in enumerate(found) if goes_before(rule, each)), len(found))
        found.insert(at, rule)
    return tuple(found)


def clashing(rules: Iterable[Rule]) -> Iterator[tuple[Rule, Rule]]:
    """Pairs that can hold together and write the same, in the order of the sheet."""
    every = list(rules)
    for number, one in enumerate(every):
        for other in every[number + 1 :]:
            meets = overlap(one.trigger, other.trigger) and written(one) & written(other)
            alike = nothing_follows((*one.effects, *other.effects))
            if meets and not alike and (one.lines, one.effects) != (other.lines, other.effects):
                yield one, other


def asked_first(rules: Iterable[Rule]) -> Iterator[tuple[Rule, Rule]]:
    """Those of them whose order does not follow from the values: the first is asked before the second."""
    for one, other in clashing(rules):
        settled = narrower(one.trigger, other.trigger) or narrower(other.trigger, one.trigger)
        if one.granted == other.granted and not settled:
            yield (other, one) if goes_before(one, other) is False else (one, other)


def clashing_rests(rests: Iterable[Rest]) -> Iterator[tuple[Rest, Rest]]:
    """Pairs of resting lines of which neither is the more particular, that say two places for one ball."""
    every = [rest for rest in rests if not rest.granted]
    for number, one in enumerate(every):
        for other in every[number + 1 :]:
            alike = one.loose == other.loose and _breadth(one) == _breadth(other)
            meets = one.results & other.results and one.balls & other.balls and one.against & other.against
            if alike and meets and one.skills & other.skills and one.by == other.by and one.to != other.to:
                yield one, other


def _breadth(rest: Rest) -> tuple[int, int, int]:
    return len(rest.results), len(rest.skills), len(rest.balls)


def rest_for(
    rests: Iterable[Rest], by: SideId, against: object, ball: KindId, result: object, skill: Skill | None
) -> Rest | None:
    """The most particular line that says where a ball comes to lie."""
    fitting = [
        rest
        for rest in rests
        if rest.by == by and against in rest.against and ball in rest.balls and result in rest.results
        if skill in rest.skills
    ]
    return min(fitting, key=lambda rest: (rest.granted, *_breadth(rest), rest.loose), default=None)

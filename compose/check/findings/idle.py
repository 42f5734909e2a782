"""Idle rule: a sentence that never takes effect, in no line of play.

No transition of it ever fires, no effect of it ever changes anything, no end of it ever holds, or nothing that
can be tried leads to it (dead transitions: van der Aalst 1998, soundness; liveness L0 of Murata 1989). It is read
out to the class for nothing, or it is not what the teacher meant. What one reason keeps idle is told as one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.check.findings.no_end import no_end
from compose.check.findings.unwinnable import unwinnable
from compose.check.found import Found, Value
from compose.check.helping import helps_nobody
from compose.check.never import NOTHING_LEADS_TO_IT, Why, never_any, why_never, why_no_reaction, why_not_fired
from compose.check.seen import Act, Seen, any_in, everywhere
from compose.check.study import Study
from compose.check.would_change import freed_by_line, of_their_kind, said_to_go, scoring
from compose.net.net import Effect, Move, Net, Rule, Transition
from grammar.core.rules import Result
from grammar.finding import IDLE, Severity
from grammar.frozen import frozen
from grammar.said import Capital, Chain, Listed, said

UNAIMED = {
    Result.HIT: Why("nobody aims at players, and the check reckons with no hit by accident"),
    Result.TOUCHED: Why("nobody touches players"),
}
_MEND = "Leave it out, or change what has to happen for it."
_MEND_ALL = "Leave them out, or change what has to happen for them."


@frozen
class Idle:
    """A sentence that never takes effect, why (of each part), and whether it only stands by for what never comes."""

    rule: Rule
    whys: tuple[Why, ...]
    harmless: bool
    touched: frozenset[int] = frozenset()
    frees: frozenset[int] = frozenset()
    scores: frozenset[str] = frozenset()
    astray: bool = False


def idle(study: Study) -> list[Found]:
    """One finding for each reason that keeps sentences from taking effect; asks for the whole of play."""
    known = (*no_end(study), *unwinnable(study))
    return idle_in(everywhere(study), known, (("states", float(study.space.states)),))


def idle_in(seen: Seen, known: Iterable[Found], numbers: tuple[tuple[str, float], ...] = ()) -> list[Found]:
    """The same of whatever was seen of play; of ends, only those of which what is `known` already does not speak."""
    elsewhere = {span for found in known for span in (found.place, *found.others)}
    ends = {end.rule for end in seen.net.ends}
    judged = [_judge(seen, rule) for rule in seen.net.rules]
    return _told(
        seen.net, [each for each in judged if each and not (each.rule.span in elsewhere and each.rule in ends)], numbers
    )


def _judge(seen: Seen, rule: Rule) -> Idle | None:
    """Why the rule never takes effect, None where it does."""
    net = seen.net
    if net.bell is not None and rule in (net.bell.rule, *(result.rule for result in net.bell.results)):
        return None
    if rule in net.reckoned:
        return None
    guards = [end.guard for end in net.ends if end.rule == rule]
    effects = [each for each in _effects(seen) if each.effect.rule == rule]
    acts = [(act, happened) for act, happened in seen.acts if rule in act.rules] if not (guards or effects) else []
    counted = [place for each in net.at_the_end if each.rule == rule for _, place in each.terms]
    if any(map(seen.ever, guards)) or any(each.changed for each in effects) or _keeps(seen, rule):
        return None
    if any(happened.fired for _, happened in acts) or any_in(seen, *counted):
        return None
    whys = [_why_unchanged(seen, each) for each in effects]
    if not effects:
        whys = [why_never(seen, guard, "an end before it holds as well each time") for guard in guards]
        whys += [_why_not_fired(seen, act) for act, _ in acts]
        whys += [never_any(net, place) for place in counted]
    whys = [UNAIMED[result] for each, result in net.unaimed if each == rule] or whys
    reasons = tuple(dict.fromkeys(whys)) or (NOTHING_LEADS_TO_IT,)
    moves = [each.effect for each in effects] + [each for act, _ in acts for each in act.effects]
    touched = frozenset(place for each in moves for place in _written(each))
    touched |= of_their_kind(net, (place for why in whys for place in why.still))
    touched |= said_to_go(net, rule) if not moves else frozenset()
    harmless = rule.stands_by or helps_nobody(seen, rule)
    frees = freed_by_line(net, rule)
    astray = bool(frees) and not any_in(seen.live, *frees)
    return Idle(rule, reasons, harmless, touched, frees, frozenset(scoring(net, rule)), astray)


def _written(effect: Effect) -> tuple[int, ...]:
    return (effect.source, effect.target) if isinstance(effect, Move) else (effect.place,)


def _keeps(seen: Seen, rule: Rule) -> bool:
    """Whether it ever keeps a ball where it is, which would go elsewhere without it."""
    return any(done.fired and isinstance(act, Transition) and rule in act.keeping for act, done in seen.acts)


@frozen
class Effected:
    """An effect, of which act it is, whether that ever happened and whether the effect ever changed a count.

    `other` is where, of two who change places, the other waits.
    """

    effect: Effect
    act: Act
    fired: bool
    changed: bool
    other: int | None = None


def _effects(seen: Seen) -> Iterator[Effected]:
    """All effects but those that are meant to change nothing."""
    for act, happened in seen.acts:
        for effect, changed in zip(act.effects, happened.changed, strict=True):
            if not isinstance(effect, Move) or effect.source != effect.target:
                other = _changes_places(act, effect)
                met = other is None or any_in(seen.live, other)
                yield Effected(effect, act, happened.fired, changed and met, other)


def _changes_places(act: Act, effect: Effect) -> int | None:
    """Where the other waits of two who change places: with nobody there the one comes straight back."""
    if not isinstance(effect, Move):
        return None
    for each in act.effects:
        back = isinstance(each, Move) and (each.source, each.target) == (effect.target, effect.source)
        if back and each.rule == effect.rule:
            return effect.target if act.effects.index(effect) < act.effects.index(each) else effect.source
    return None


def _why_not_fired(seen: Seen, act: Act) -> Why:
    return why_not_fired(seen, act) if isinstance(act, Transition) else why_no_reaction(seen, act)


def _why_unchanged(seen: Seen, each: Effected) -> Why:
    """Why an effect never changed a count: what its move finds each time, before anything else follows from it."""
    effect, net = each.effect, seen.net
    if not each.fired:
        return _why_not_fired(seen, each.act)
    if not isinstance(effect, Move):
        return Why(said("it never changes the {tokens}", tokens=net.places[effect.place]))
    source = effect.source if each.other is None else each.other
    tokens = net.places[source]
    if not any_in(seen.live, source):
        return never_any(net, source)
    if any(seen.is_full(room, each.act) for room in effect.rooms):
        return Why(said("when it should, there is never room for more {tokens}", tokens=net.places[effect.target]))
    return Why(said("when it should, there are no {tokens}, or there is no room for them", tokens=tokens))


def _told(net: Net, idle: Iterable[Idle], numbers: tuple[tuple[str, float], ...]) -> list[Found]:
    """One finding for each reason that keeps sentences from taking effect."""
    groups: list[list[Idle]] = []
    for found in idle:
        alike = next(
            (group for group in groups if _common([*group, found]) or _nobody_moves(net, [*group, found])), None
        )
        if alike is None:
            groups.append([found])
        else:
            alike.append(found)
    return [_finding(alike, numbers) for alike in groups]


def _common(alike: list[Idle]) -> tuple[Why, ...]:
    """The reasons that keep all of them idle; none where some do no harm and others do."""
    if len({each.harmless for each in alike}) > 1:
        return ()
    first, *others = alike
    return tuple(why for why in first.whys if all(why in each.whys for each in others))


def _nobody_moves(net: Net, alike: list[Idle]) -> bool:
    """Whether all are idle because nobody of a side ever leaves play, so that nobody waits and none are missing."""
    whys = [why for each in alike for why in each.whys]
    still = [[net.places[place] for place in why.still] for why in whys]
    if not all(places and all(each.token == "player" for each in places) for places in still):
        return False
    staying = {each.side for places in still for each in places if each.start}
    return bool(staying) and all(staying & {each.side for each in places} for places in still)


def _finding(alike: list[Idle], numbers: tuple[tuple[str, float], ...]) -> Found:
    alike = sorted(alike, key=lambda each: each.harmless)
    first, others = alike[0], alike[1:]
    common = _common(alike)
    shared = common[0] if common else first.whys[0]
    whys = (shared.told,) if common else tuple(dict.fromkeys(each.whys[0].told for each in alike))
    title = said("{line} never takes effect.", line=first.rule)
    if others:
        title = said("{line} and 1 other line never take effect.", line=first.rule)
        if len(others) > 1:
            title = said("{line} and {number} other lines never take effect.", line=first.rule, number=len(others))
    return Found(
        code=IDLE,
        severity=Severity.NOTE if first.harmless else Severity.WARNING,
        title=title,
        place=first.rule.span,
        hint=Chain((said("{why}.", why=Capital(Chain(whys, "; "))), *_and_then(first, others))),
        others=tuple(dict.fromkeys((*(each.rule.span for each in others), *shared.lines))),
        numbers=numbers,
        about=frozenset.intersection(*(each.touched for each in alike)),
        frees=frozenset[int]().union(*(each.frees for each in alike)),
        scores=frozenset[str]().union(*(each.scores for each in alike)),
        astray=all(each.astray for each in alike),
    )


def _and_then(first: Idle, others: list[Idle]) -> Iterator[Value]:
    """What is idle for the same reason, and what mends it."""
    if others:
        yield said("For the same reason: {lines}.", lines=Listed(tuple(each.rule for each in others)))
    if first.harmless:
        yield "It does no harm."
    else:
        yield _MEND_ALL if others else _MEND

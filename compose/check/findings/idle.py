"""Idle rule: a sentence that never takes effect, in no line of play.

No transition of it ever fires, no effect of it ever changes anything, no end of it ever holds, or nothing that
can be tried leads to it (dead transitions: van der Aalst 1998, soundness; liveness L0 of Murata 1989). It is read
out to the class for nothing, or it is not what the teacher meant. What one reason keeps idle is told as one.
"""

from __future__ import annotations

from collections.abc import Iterator

from compose.check.findings.idle_told import CODE as CODE
from compose.check.findings.idle_told import HELPING, UNAIMED, Idle, told
from compose.check.findings.no_end import no_end
from compose.check.findings.unwinnable import unwinnable
from compose.check.found import Found
from compose.check.never import NOTHING_LEADS_TO_IT, Why, why_never, why_no_reaction, why_not_fired
from compose.check.seen import everywhere
from compose.check.space import Happened
from compose.check.study import Study
from compose.net.net import Effect, Move, Reaction, Rule, Transition
from grammar.frozen import frozen
from grammar.said import said


def idle(study: Study) -> list[Found]:
    """One finding for each reason that keeps sentences from taking effect; asks for the whole of play."""
    told_of = (*no_end(study), *unwinnable(study))
    elsewhere = {span for found in told_of for span in (found.place, *found.others)}
    ends = {end.rule for end in study.net.ends}
    judged = [_judge(study, rule) for rule in study.net.rules]
    found = [each for each in judged if each and not (each.rule.span in elsewhere and each.rule in ends)]
    return told(found, (("states", float(study.space.states)),))


def _judge(study: Study, rule: Rule) -> Idle | None:
    """Why the rule never takes effect, None where it does."""
    net = study.net
    if net.bell is not None and rule in (net.bell.rule, *(result.rule for result in net.bell.results)):
        return None
    ends = [number for number, end in enumerate(net.ends) if end.rule == rule]
    effects = [each for each in _effects(study) if each.effect.rule == rule]
    acts = [(act, happened) for act, happened in _acts(study) if rule in act.rules] if not (ends or effects) else []
    if any(study.held[number] for number in ends) or any(each.changed for each in effects) or _keeps(study, rule):
        return None
    counted = [place for each in net.at_the_end if each.rule == rule for _, place in each.terms]
    if any(happened.fired for _, happened in acts) or study.table[:, counted].any():
        return None
    whys = [_why_unchanged(study, each) for each in effects]
    if not effects:
        guards = [net.ends[end].guard for end in ends]
        whys = [why_never(everywhere(study), guard, "an end before it holds as well each time") for guard in guards]
        whys += [_why_not_fired(study, act) for act, _ in acts]
        whys += [Why(said("there are never any {tokens}", tokens=net.places[place])) for place in counted]
    whys = [UNAIMED[result] for each, result in net.unaimed if each == rule] or whys
    reasons = tuple(dict.fromkeys(whys)) or (NOTHING_LEADS_TO_IT,)
    return Idle(rule, reasons, rule.stands_by or _helps_nobody(study, rule))


def _keeps(study: Study, rule: Rule) -> bool:
    """Whether it ever keeps a ball where it is, which would go elsewhere without it."""
    moves = zip(study.net.transitions, study.space.happened, strict=True)
    return any(happened.fired and rule in move.keeping for move, happened in moves)


def _helps_nobody(study: Study, rule: Rule) -> bool:
    """Whether the rule only brings back what never goes away."""
    parts = [transition for transition in study.net.transitions if rule in transition.rules]
    sources = [each.source for part in parts for each in part.effects if isinstance(each, Move)]
    return (
        bool(parts)
        and not any(rule in reaction.rules for reaction in study.net.reactions)
        and all(part.attempt.skill in HELPING for part in parts)
        and not (study.table[:, sources].any(axis=1) & ~study.ended).any()
    )


def _acts(study: Study) -> list[tuple[Transition | Reaction, Happened]]:
    net, space = study.net, study.space
    return [*zip(net.transitions, space.happened, strict=True), *zip(net.reactions, space.reacted, strict=True)]


@frozen
class Effected:
    """An effect, of which act it is, whether that ever happened and whether the effect ever changed a count.

    `number` is that of a transition, -1 for a reaction. `other` is where, of two who change places, the other waits.
    """

    effect: Effect
    act: Transition | Reaction
    number: int
    fired: bool
    changed: bool
    other: int | None = None


def _effects(study: Study) -> Iterator[Effected]:
    """All effects but those that are meant to change nothing."""
    for number, (act, happened) in enumerate(_acts(study)):
        known = number if isinstance(act, Transition) else -1
        for effect, changed in zip(act.effects, happened.changed, strict=True):
            if not isinstance(effect, Move) or effect.source != effect.target:
                other = _changes_places(act, effect)
                met = other is None or study.table[~study.ended, other].any()
                yield Effected(effect, act, known, happened.fired, changed and met, other)


def _changes_places(act: Transition | Reaction, effect: Effect) -> int | None:
    """Where the other waits of two who change places: with nobody there the one comes straight back."""
    if not isinstance(effect, Move):
        return None
    for each in act.effects:
        back = isinstance(each, Move) and (each.source, each.target) == (effect.target, effect.source)
        if back and each.rule == effect.rule:
            return effect.target if act.effects.index(effect) < act.effects.index(each) else effect.source
    return None


def _why_not_fired(study: Study, act: Transition | Reaction) -> Why:
    if isinstance(act, Transition):
        return why_not_fired(everywhere(study), act)
    return why_no_reaction(everywhere(study), act)


def _why_unchanged(study: Study, each: Effected) -> Why:
    """Why an effect never changed a count: what its move finds each time, before anything else follows from it."""
    effect, net = each.effect, study.net
    if not each.fired:
        return _why_not_fired(study, each.act)
    if not isinstance(effect, Move):
        return Why(said("it never changes the {tokens}", tokens=net.places[effect.place]))
    source = effect.source if each.other is None else each.other
    tokens = net.places[source]
    if not study.table[~study.ended, source].any():
        return Why(said("there are never any {tokens}", tokens=tokens))
    before = study.table[study.sources[study.space.transitions == each.number]]
    if len(before) and any((before[:, room.places].sum(axis=1) >= room.most).all() for room in effect.rooms):
        return Why(said("when it should, there is never room for more {tokens}", tokens=net.places[effect.target]))
    return Why(said("when it should, there are no {tokens}, or there is no room for them", tokens=tokens))

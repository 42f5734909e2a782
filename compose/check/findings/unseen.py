"""What can never be however many situations there are: proved from bounds of every count, where not all is looked at.

Sentences that never take effect, and sides that can never win. More may be idle than bounds show; what they show is so.
"""

from __future__ import annotations

from compose.check.bounds import Bounds, bounds
from compose.check.findings.idle_told import HELPING, UNAIMED, Idle, told
from compose.check.findings.unwinnable import lost_sides_told
from compose.check.found import Found
from compose.check.match import decides
from compose.check.never import NOTHING_LEADS_TO_IT, Why, why_never, why_no_reaction, why_not_fired
from compose.net.net import Effect, Move, Net, Reaction, Rule, Transition
from grammar.said import said


def unseen(net: Net) -> list[Found]:
    """What bounds of a net prove; no situation is looked at."""
    known = bounds(net)
    lost = lost_sides_told(known, _lost(known))
    elsewhere = {span for found in lost for span in (found.place, *found.others)}
    ends = {end.rule for end in net.ends}
    judged = [_judge(known, rule) for rule in net.rules]
    return [*lost, *told(each for each in judged if each and not (each.rule in ends and each.rule.span in elsewhere))]


def _lost(known: Bounds) -> list[str]:
    """The sides of which no end and no result at the bell may hold; over two halves that says nothing of a group."""
    net = known.net
    if net.match.halves or not decides(net):
        return []
    results = (*net.ends, *(net.bell.results if net.bell is not None else ()))
    return [side for side in net.sides if not any(end.winner == side and known.ever(end.guard) for end in results)]


def _judge(known: Bounds, rule: Rule) -> Idle | None:
    """Why a rule can never take effect, None where it may."""
    net = known.net
    if net.bell is not None and rule in (net.bell.rule, *(result.rule for result in net.bell.results)):
        return None
    ends = [end for end in net.ends if end.rule == rule]
    all_acts: list[tuple[Transition | Reaction, bool]] = [
        *zip(net.transitions, known.happens, strict=True),
        *zip(net.reactions, known.follows, strict=True),
    ]
    effects = [(act, may, each) for act, may in all_acts for each in act.effects if each.rule == rule and _moves(each)]
    acts = [(act, may) for act, may in all_acts if rule in act.rules] if not (ends or effects) else []
    counted = [place for each in net.at_the_end if each.rule == rule for _, place in each.terms]
    if (
        any(known.ever(end.guard) for end in ends)
        or any(may and _changes(known, effect) for _, may, effect in effects)
        or any(may for _, may in acts)
        or any(known.most[place] for place in counted)
        or any(may and rule in act.keeping for act, may in zip(net.transitions, known.happens, strict=True))
    ):
        return None
    whys = [_why_unchanged(known, act, may, effect) for act, may, effect in effects]
    if not effects:
        whys = [why_never(known, end.guard, "an end before it holds as well each time") for end in ends]
        whys += [_why_not(known, act) for act, _ in acts]
        whys += [Why(said("there are never any {tokens}", tokens=net.places[place])) for place in counted]
    whys = [UNAIMED[result] for each, result in net.unaimed if each == rule] or whys
    reasons = tuple(dict.fromkeys(whys)) or (NOTHING_LEADS_TO_IT,)
    return Idle(rule, reasons, rule.stands_by or _helps_nobody(known, rule))


def _moves(effect: Effect) -> bool:
    """Whether it is meant to change anything."""
    return not isinstance(effect, Move) or effect.source != effect.target


def _changes(known: Bounds, effect: Effect) -> bool:
    return not isinstance(effect, Move) or known.most[effect.source] > 0


def _why_not(known: Bounds, act: Transition | Reaction) -> Why:
    return why_not_fired(known, act) if isinstance(act, Transition) else why_no_reaction(known, act)


def _why_unchanged(known: Bounds, act: Transition | Reaction, may: bool, effect: Effect) -> Why:
    if not may or not isinstance(effect, Move):
        return _why_not(known, act)
    return Why(said("there are never any {tokens}", tokens=known.net.places[effect.source]))


def _helps_nobody(known: Bounds, rule: Rule) -> bool:
    """Whether the rule only brings back what never goes away."""
    parts = [act for act in known.net.transitions if rule in act.rules]
    sources = [each.source for part in parts for each in part.effects if isinstance(each, Move)]
    return (
        bool(parts)
        and not any(rule in reaction.rules for reaction in known.net.reactions)
        and all(part.attempt.skill in HELPING for part in parts)
        and not any(known.most[place] for place in sources)
    )

"""Which sentence a finding points at, and what a state is short of."""

from __future__ import annotations

from collections.abc import Sequence

from compose.check.condition import clauses, evaluate
from compose.check.found import Share, Value
from compose.check.never import plain
from compose.check.rate import factor
from compose.check.study import Study
from compose.net.net import Comparison, Move, Net, Not, Rate
from grammar.said import Chain, said
from grammar.span import Span, nowhere

MOST_NAMED = 3


def told_as_one(net: Net, sides: Sequence[str]) -> list[list[str]]:
    """The sides in groups of which one finding speaks: mirrored ones together, every other by itself."""
    groups: dict[str, list[str]] = {}
    for side in sides:
        groups.setdefault("" if side in net.mirrored else side, []).append(side)
    return list(groups.values())


def span_of_last_move(study: Study, state: int) -> Span:
    """The sentence behind the last move of the shortest line to a state."""
    by = int(study.space.by[state])
    rules = study.net.rules
    if by >= 0:
        move = study.net.transitions[by]
        rules = move.rules or tuple(effect.rule for effect in move.effects)
    return rules[0].span if rules else nowhere()


def span_of_arrival(study: Study, state: int, place: int) -> Span:
    """The sentence by which the last move of the shortest line to a state puts something into a place; of a move that
    does not, the sentence behind it."""
    by = int(study.space.by[state])
    effects = study.net.transitions[by].effects if by >= 0 else ()
    there = [each.rule.span for each in effects if isinstance(each, Move) and each.target == place]
    return there[0] if there and there[0].line else span_of_last_move(study, state)


def missing_in(study: Study, state: int) -> Chain:
    """What keeps every transition from happening in a state: "no balls in the north half"."""
    row = study.table[state : state + 1]
    reasons: list[Value] = []
    for transition in study.net.transitions:
        if transition.ticks:  # no time of the clock is missing: it has passed
            continue
        unmet = [c for c in clauses(transition.guard) if not evaluate(c, lambda p: row[:, p], 1)[0]]
        if factor(transition.rate, lambda p: row[:, p], 1)[0] == 0:
            reasons += short_of(transition.rate, [int(count) for count in row[0]], study.net)
        elif unmet:
            instead = plain(Not(unmet[0]))
            reasons.append(said("not so: {it}", it=unmet[0]) if isinstance(instead, Not) else said("{it}", it=instead))
    return Chain(tuple(dict.fromkeys(reasons)), ", ", MOST_NAMED)


def missing_places(study: Study, state: int) -> tuple[int, ...]:
    """The places that are empty in a state where whoever acts needs something of them."""
    counts = study.table[state]
    sums: list[tuple[int, ...]] = []
    for transition in study.net.transitions:
        if not transition.ticks:
            asked = (c for c in clauses(transition.guard) if isinstance(c, Comparison) and c.relation == ">=")
            sums += [tuple(place for times, place in each.terms if times > 0) for each in asked if each.bound > 0]
            sums += [*transition.rate.limits, *(ratio.numerator for ratio in transition.rate.ratios)]
    return tuple(dict.fromkeys(place for places in sums if not counts[list(places)].sum() for place in places))


def short_of(rate: Rate, counts: list[int], net: Net) -> list[Value]:
    """The limits and numerators of a rate that are empty."""
    sums = [*rate.limits, *(ratio.numerator for ratio in rate.ratios)]
    return [
        said("no {tokens}", tokens=Chain(tuple(net.places[place] for place in places), " or "))
        for places in sums
        if places and sum(counts[place] for place in places) == 0
    ]


def how_many_like_this(part: int, whole: int) -> Value:
    """How common a kind of situation is among all that play can come to (how often it comes is another matter)."""
    return said("Of all situations that play can come to, {share} are like this.", share=Share(part, whole))

"""Exploration one marking at a time with tuples and dictionaries: slow, plain, independent."""

from __future__ import annotations

from fractions import Fraction

from attrs import define, field

from compose.net.net import (
    All,
    AnyOf,
    Assign,
    Comparison,
    Condition,
    Effect,
    Move,
    Net,
    Not,
    Rate,
    Transition,
)

Marking = tuple[int, ...]
ROUNDS = 16


@define
class Plain:
    """States in order of discovery; edges (source, transition, target, factor); what happened."""

    states: list[Marking]
    edges: list[tuple[int, int, int, float]] = field(factory=list)
    ends: list[int] = field(factory=list)
    changed: set[tuple[str, int, int]] = field(factory=set)
    chases: set[tuple[int, int]] = field(factory=set)


def true(condition: Condition, marking: Marking) -> bool:
    match condition:
        case Comparison(terms, relation, bound):
            total = sum(coefficient * marking[place] for coefficient, place in terms)
            return {"<=": total <= bound, ">=": total >= bound, "==": total == bound}[relation]
        case All(parts):
            return all(true(part, marking) for part in parts)
        case AnyOf(parts):
            return any(true(part, marking) for part in parts)
        case Not(part):
            return not true(part, marking)
    raise AssertionError(condition)


def rate(given: Rate, marking: Marking) -> Fraction:
    result = Fraction(min((sum(marking[p] for p in limit) for limit in given.limits), default=1))
    for ratio in given.ratios:
        below = ratio.denominator
        whole = below if isinstance(below, int) else sum(marking[p] for p in below)
        result *= Fraction(sum(marking[p] for p in ratio.numerator), whole) if whole else Fraction(0)
    return result


def apply(effects: tuple[Effect, ...], marking: Marking, net: Net, name: tuple[str, int], plain: Plain) -> Marking:
    counts = list(marking)
    for position, effect in enumerate(effects):
        before = list(counts)
        if isinstance(effect, Move):
            if effect.source != effect.target:
                room = net.places[effect.target].capacity - counts[effect.target]
                taken = min(counts[effect.source], room)
                taken = taken if effect.amount is None else min(taken, effect.amount)
                for limit in effect.rooms:
                    taken = min(taken, max(0, limit.most - sum(counts[place] for place in limit.places)))
                counts[effect.source] -= taken
                counts[effect.target] += taken
        else:
            value = effect.value if isinstance(effect, Assign) else counts[effect.place] + effect.by
            counts[effect.place] = max(0, min(net.places[effect.place].capacity, value))
        if counts != before:
            plain.changed.add((*name, position))
    return tuple(counts)


def step(transition: Transition, number: int, marking: Marking, net: Net, plain: Plain) -> tuple[Marking, bool]:
    """The marking after a transition and all that follows at once, and whether that settled."""
    before, after = marking, apply(transition.effects, marking, net, ("transition", number), plain)
    for turn in range(ROUNDS + 1):
        due = [k for k, r in enumerate(net.reactions) if true(r.guard, after) and not true(r.guard, before)]
        if not due:
            return after, True
        if turn == ROUNDS:
            break
        before = after
        for k in due:
            after = apply(net.reactions[k].effects, after, net, ("reaction", k), plain)
    return after, False


def explore_plainly(net: Net) -> Plain:
    plain = Plain([net.start()])
    numbers = {net.start(): 0}
    for source, marking in enumerate(plain.states):
        plain.ends.append(next((k for k, e in enumerate(net.ends) if true(e.guard, marking)), -1))
        if plain.ends[-1] >= 0:
            continue
        for k, transition in enumerate(net.transitions):
            factor = rate(transition.rate, marking)
            if true(transition.guard, marking) and factor > 0:
                after, settled = step(transition, k, marking, net, plain)
                if after not in numbers:
                    numbers[after] = len(plain.states)
                    plain.states.append(after)
                plain.edges.append((source, k, numbers[after], float(factor)))
                if not settled:
                    plain.chases.add((source, k))
    return plain

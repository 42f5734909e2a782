"""Lines by which play only goes on: what wider lines say of the same event does not follow then, either.

What is taken for granted holds all the same: a lantern that is knocked stays down.
"""

from __future__ import annotations

from collections.abc import Iterable

from grammar.core.precedence import goes_before, overlap, written
from grammar.core.rules import Nothing, Rule
from grammar.frozen import evolve


def with_nothing_else(rules: Iterable[Rule]) -> tuple[Rule, ...]:
    """The rules, each that says only so with what wider lines of the sheet would write, where there are such."""
    every = tuple(rules)
    return tuple(_nothing_else(rule, every) if Nothing() in rule.effects else rule for rule in every)


def _nothing_else(rule: Rule, every: Iterable[Rule]) -> Rule:
    effects = tuple(effect for effect in rule.effects if effect != Nothing())
    own = (each for each in every if not each.granted and each.lines != rule.lines)
    wider = [each for each in own if overlap(rule.trigger, each.trigger) and goes_before(rule, each)]
    spared = frozenset(slot for each in wider for slot in written(each)) - written(evolve(rule, effects=effects))
    return evolve(rule, effects=(*effects, Nothing(spared)) if spared else effects)

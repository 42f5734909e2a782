"""Where players wait: the places from which a rule or a service brings them back."""

from __future__ import annotations

from grammar.core.game import Play
from grammar.core.play import ComeBack, Free, Waiting
from grammar.core.rules import Go, Happening, Person, Swap
from grammar.core.values import At, Spot


def waited_at(play: Play) -> frozenset[Spot]:
    """All of them, of every side."""
    found: set[Spot] = set()
    for rule in play.rules:
        for effect in rule.effects:
            who = effect.who if isinstance(effect, Go) else effect.other if isinstance(effect, Swap) else None
            if isinstance(who, Waiting):
                found |= who.at
            elif who is Person.MATE and isinstance(rule.trigger, Happening):
                found |= {at.spot for at in rule.trigger.at if isinstance(at, At)}  # it brings back who caught the pass
    for service in play.services:
        if isinstance(service, Free):
            found |= service.waiting.at
        elif isinstance(service, ComeBack):
            found |= service.at
    return frozenset(found)

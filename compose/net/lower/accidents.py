"""Lines for what nobody tries: that a thing stays down whoever knocks it, by accident, too."""

from __future__ import annotations

from grammar.core.game import Play
from grammar.core.play import AtThing, Lines
from grammar.core.rules import Happening, Put, Result, Rule
from grammar.core.values import Posture


def by_accident(play: Play) -> frozenset[Lines]:
    """The lines that say of those who aim at no such thing what holds for those who do: they need not come."""
    rules: dict[Lines, list[Rule]] = {}
    for rule in play.rules:
        rules.setdefault(rule.lines, []).append(rule)
    return frozenset(lines for lines, some in rules.items() if all(_stands_by(play, rule) for rule in some))


def _stands_by(play: Play, rule: Rule) -> bool:
    trigger = rule.trigger
    if not isinstance(trigger, Happening) or trigger.result is not Result.KNOCKED:
        return False
    aimed = {(offer.by, attempt.aim.thing) for offer, attempt in play.tries if isinstance(attempt.aim, AtThing)}
    kinds = {thing.kind for _, thing in aimed}
    theirs = any(who in trigger.by and thing in trigger.to for who, thing in aimed)
    falls = rule.effects == (Put(Posture.DOWN),)
    return falls and not theirs and any(getattr(to, "kind", None) in kinds for to in trigger.to)

"""Targets that cannot fall, such as a goal, of which nothing says that they stay: "it stays down" is then granted."""

from __future__ import annotations

from collections.abc import Iterator

import library
from grammar.core.game import Core
from grammar.core.play import AtThing
from grammar.core.rules import Happening, OfThing, Result
from grammar.core.values import KindId
from grammar.finding import Finding, Severity

CODE = "N-fixed"


def fixed_targets(core: Core) -> Iterator[Finding]:
    """A warning for each kind that is aimed at and would be down after the first hit."""
    aims = (attempt.aim for attempt in core.play.attempts)
    said = {aim.thing.kind for aim in aims if isinstance(aim, AtThing) and not _is_told(core, aim.thing.kind)}
    for kind in (each for each in core.play.kinds if each.id in said):
        item = library.kit_names().get(kind.like.key)
        if item is not None and item.fixed and kind.lines:
            title = f"A {item.name} does not fall, and no line says what becomes of it: it counts once, then as down."
            hint = f"Write under when, such as: a {kind.id.key} is knocked: it stands up again"
            yield Finding(CODE, Severity.WARNING, title, core.lines[kind.lines[0]].span, hint)


def _is_told(core: Core, kind: KindId) -> bool:
    """Whether a line of the sheet says what becomes of a thing of that kind once it is hit."""
    return any(
        isinstance(rule.trigger, Happening)
        and rule.trigger.result is Result.KNOCKED
        and any(getattr(thing, "kind", None) == kind for thing in rule.trigger.to)
        and any(isinstance(effect, OfThing) for effect in rule.effects)
        for rule in core.play.rules
        if not rule.granted
    )

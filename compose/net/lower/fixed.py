"""Targets that cannot fall, such as a goal, of which a line asks how many stand or are down: that never changes."""

from __future__ import annotations

from collections.abc import Iterator

import library
from grammar.core.game import Core, Play
from grammar.core.guards import Count, ThingsAt, counts_in
from grammar.core.play import AtThing, Lines, Order
from grammar.core.rules import Happening, Own, Put
from grammar.core.schedule import compared, guards_of
from grammar.core.values import KindId, Posture, Thing
from grammar.finding import Finding, Severity

CODE = "N-fixed"


def fixed_targets(core: Core) -> Iterator[Finding]:
    """A warning for each line that asks for what cannot change."""
    standing = _always_stand(core.play)
    told: set[int] = set()
    for kind, line in _asked(core.play):
        if kind in standing and line not in told:
            told.add(line)
            item = library.kit_names()[core.play.kind(kind).like.key]
            title = f"A {item.name} does not fall when it is hit, so that this never changes: it always stands."
            hint = f"Let hits count, under when: a {kind.key} is knocked: the thrower's side scores 1 point"
            yield Finding(CODE, Severity.WARNING, title, core.lines[line].span, hint)


def _always_stand(play: Play) -> frozenset[KindId]:
    """The kinds that never fall, of which no line says otherwise."""
    changed = {start.what.kind for start in play.starts if start.down and isinstance(start.what, Thing)}
    for rule in play.rules:
        falls = any(effect == Put(Posture.DOWN) or isinstance(effect, Own) for effect in rule.effects)
        if falls and isinstance(rule.trigger, Happening):
            changed |= {thing.kind for thing in rule.trigger.to if isinstance(thing, Thing)}
    return frozenset(kind.id for kind in play.kinds if kind.fixed and kind.id not in changed)


def _asked(play: Play) -> Iterator[tuple[KindId, int]]:
    """The kinds of which a line asks how they stand, or wants the first of a row to fall."""
    for count, lines in _counts(play):
        kinds = {thing.kind for thing in count.of} if isinstance(count, ThingsAt) else set()
        if isinstance(count, ThingsAt) and len(kinds) == 1 and all(isinstance(at, Posture) for at in count.at):
            yield next(iter(kinds)), lines[0]
    for offer, attempt in play.tries:
        if isinstance(attempt.aim, AtThing) and attempt.aim.order is Order.IN_ORDER:
            yield attempt.aim.thing.kind, offer.lines[0]


def _counts(play: Play) -> Iterator[tuple[Count, Lines]]:
    """All that lines count, with the lines."""
    yield from ((count, lines) for guard, lines in guards_of(play) for count in counts_in(guard))
    yield from compared(play)

"""Sides that the sheet calls mirrored and that are not: a line about one of them has no counterpart for the other. And
sides that are, and change their tasks all the same."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.ends import Seats
from grammar.core.game import Core
from grammar.core.renaming import unlike
from grammar.finding import Basis, Finding, Severity
from grammar.words import listing

CODE = "N-mirrored"


def unlike_sides(core: Core) -> Iterator[Finding]:
    """One warning at the first such line; the others are told beside it."""
    granted = frozenset(number for number, line in enumerate(core.lines) if line.granted)
    lines = list(dict.fromkeys(unlike(core.play, core.play.mirrored, granted)))
    if lines:
        first, *others = (core.lines[line] for line in lines)
        sides = listing([side.key for side in core.play.side_ids if side in core.play.mirrored])
        title = f"The sheet calls {sides} mirrored, but `{first.words}` makes them unlike."
        hint = "Say the same of each side, or leave out `mirrored` where it is meant to be uneven."
        places = tuple(line.span for line in others)
        yield Finding(CODE, Severity.WARNING, title, first.span, hint, places, basis=Basis.PROVED)


def same_tasks(core: Core) -> Iterator[Finding]:
    """A note where sides change tasks that have the same: it does no harm."""
    match = core.play.match
    if match.change is Seats.TASKS and not any(unlike(core.play, frozenset(core.play.side_ids))):
        title = "The sides change tasks, but they have the same task: nothing is different then."
        hint = "Leave that out, or give the sides tasks of their own."
        yield Finding("N-same-tasks", Severity.NOTE, title, core.lines[match.lines[0]].span, hint, basis=Basis.PROVED)

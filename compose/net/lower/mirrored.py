"""Sides that the sheet calls mirrored and that are not: a line about one of them has no counterpart for the other."""

from __future__ import annotations

from collections.abc import Iterator

from grammar.core.game import Core
from grammar.core.renaming import unlike
from grammar.finding import Basis, Finding, Severity
from grammar.words import listing


def unlike_sides(core: Core) -> Iterator[Finding]:
    """One warning at the first such line; the others are told beside it."""
    lines = list(dict.fromkeys(line for each in unlike(core.play) for line in each if not core.lines[line].granted))
    if lines:
        first, *others = (core.lines[line] for line in lines)
        sides = listing([side.key for side in core.play.side_ids if side in core.play.mirrored])
        title = f"The sheet calls {sides} mirrored, but `{first.words}` makes them unlike."
        hint = "Say the same of each side, or leave out `mirrored` where it is meant to be uneven."
        places = tuple(line.span for line in others)
        yield Finding("N-mirrored", Severity.WARNING, title, first.span, hint, places, basis=Basis.PROVED)

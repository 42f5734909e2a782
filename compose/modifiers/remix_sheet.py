"""The remix as a sheet of its own, and what it is called."""

from __future__ import annotations

import attrs

from compose.modifiers.remix import REMIX, Remix
from compose.modifiers.words_before import words_before
from grammar.format import format_game


def remix_text(made: Remix) -> str:
    """The remixed game as a sheet of its own, with notes that say where it comes from."""
    if not made.uses:
        return format_game(made.game.sheet)
    notes = (f"A remix of {made.base.title}.", *(f"Modifier: {use.label}." for use in made.uses))
    if words_before(made):
        notes = (*notes, f"Its head still has words of {made.base.title} that it may no longer do: write them anew.")
    sheet = attrs.evolve(made.game.sheet, title=remix_title(made), notes=notes)
    return format_game(sheet)


def remix_title(made: Remix) -> str:
    """The name of the remix, short enough for a card."""
    if made.game.title != made.base.title:
        return made.game.title
    return f"{made.base.title}{REMIX}"[:60] if made.uses else made.base.title

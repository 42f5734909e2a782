"""A remix as a value; `apply` makes it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from grammar.frozen import frozen
from grammar.game import Game

if TYPE_CHECKING:
    from compose.modifiers.edit import Edit
    from compose.modifiers.modifier import Use

REMIX = " Remix"  # what the title of a game ends with that modifiers changed
OWN_EDITS = "own edits"  # what the changes of a remix's own sheet are called


@frozen
class Remix:
    """A remixed game with what it came from: the base, the modifiers in order, and each edit."""

    base: Game
    game: Game
    uses: tuple[Use, ...] = ()
    edits: tuple[Edit, ...] = ()

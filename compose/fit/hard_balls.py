"""Balls that are too hard for what is done with them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.modifiers.fit_for import hard_at_people
from compose.staging.found import warning
from grammar.finding import Finding
from grammar.game import Game
from library import KitItem


def hard_balls(game: Game, kit: Mapping[str, KitItem]) -> Iterator[Finding]:
    """Hard balls where players are aimed at."""
    for line in (game.kit_named(ball.key) for ball in hard_at_people(game, kit)):
        title = f"Players are aimed at with {line.plural}, which are not soft."
        yield warning("F-hard-ball", title, line.span, "Take soft balls.")

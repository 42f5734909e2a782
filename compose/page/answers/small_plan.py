"""A game's set-up as a small picture in SVG."""

from __future__ import annotations

from collections.abc import Mapping

from compose.draw.plan.small import small_plan as drawn
from compose.draw.signs.to_svg import svg_of
from compose.staging.laid_out import laid_out
from compose.telling.wording import Wording
from grammar.game import Game


def small_plan(game: Game, players: Mapping[str, int], wording: Wording, key: str) -> str:
    """The picture; `key` keeps the ids of several pictures on one page apart."""
    return svg_of(drawn(game, laid_out(game, players), wording), 320, key=key)

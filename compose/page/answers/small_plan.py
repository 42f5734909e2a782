"""A game's set-up as a small picture: no words and no sizes, only who and what stands where."""

from __future__ import annotations

from collections.abc import Mapping

from compose.draw.frame import frame_box, frame_of, frame_sheet
from compose.draw.to_svg import svg_of
from compose.draw.tokens import SHOWN, Token
from compose.staging.laid_out import laid_out
from compose.telling.wording import Wording
from grammar.game import Game


def small_plan(game: Game, players: Mapping[str, int], wording: Wording, key: str) -> str:
    """The picture as SVG; `key` keeps the ids of several pictures on one page apart."""
    floor = laid_out(game, players)
    tokens = tuple(Token(str(n), item) for n, item in enumerate(floor.items) if item.category in SHOWN)
    box = frame_box(floor, frame_sheet(game, floor, wording), tokens)
    words = (wording.say("Set-up of {game}", game=game.title), "")
    return svg_of(frame_of(game, floor, tokens, box, words, wording), 320, key=key)

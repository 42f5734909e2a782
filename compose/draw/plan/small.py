"""A game's set-up as a small picture: no sizes, only who and what stands where."""

from __future__ import annotations

from compose.draw.signs.shapes import Drawing
from compose.draw.strip.picture import frame_box, frame_of, frame_sheet
from compose.draw.strip.whereabouts import SHOWN, Token
from compose.staging.floor.values import Floor
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game


def small_plan(game: Game, floor: Floor, wording: Wording = ENGLISH) -> Drawing:
    """The picture of one court."""
    tokens = tuple(Token(str(n), item) for n, item in enumerate(floor.items) if item.category in SHOWN)
    box = frame_box(floor, frame_sheet(game, floor, wording), tokens)
    return frame_of(game, floor, tokens, box, (wording.say("Set-up of {game}", game=game.title), ""), wording)

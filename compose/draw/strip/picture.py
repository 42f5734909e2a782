"""One moment of a round as a small plan: the court, and the tokens on it."""

from __future__ import annotations

from collections.abc import Iterable

from attrs import evolve

from compose.draw.plan.court import draw_court, draw_tracks, name_sides
from compose.draw.plan.sheet import Sheet
from compose.draw.signs.palette import MIDDLE, PALE, WHITE, SideStyle
from compose.draw.signs.shapes import Disc, Drawing, Ink, Lines, Shape, rectangle
from compose.draw.signs.symbols import player, symbol
from compose.draw.strip.whereabouts import SHOWN, Token
from compose.staging.floor.values import Floor, Rectangle
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game

SIGN = 1.35  # our choice: signs are this much larger than on a plan of a whole page
RIM = 1.1  # the largest sign with the edge around it, of its radius


def frame_sheet(game: Game, floor: Floor, wording: Wording = ENGLISH) -> Sheet:
    """The sheet on which every frame of a game is drawn: bare, so that nothing is named but the sides."""
    extent = floor.extent
    unit = max(extent.length, 1.6 * extent.width) / 100
    return Sheet(game, evolve(floor, items=()), unit, 1.7, wording=wording)


def frame_box(floor: Floor, sheet: Sheet, tokens: Iterable[Token]) -> Rectangle:
    """The box that holds the court with what stays on its floor and all tokens of all moments."""
    reach = 1.6 * SIGN * sheet.least_m
    around = floor.extent.grown(reach * 0.6)
    for item in (*floor.items, *(token.item for token in tokens)):
        spot = Rectangle(item.x, item.y, item.x, item.y)
        around = around.joined(spot.grown(max(reach, RIM * item.radius)))
    named = 1.7 * sheet.text_m if floor.halves else 0.0
    return evolve(around, top=max(around.top, floor.extent.top + named))


def court_shapes(game: Game, floor: Floor, box: Rectangle, wording: Wording = ENGLISH) -> tuple[Shape, ...]:
    """What stays from moment to moment: lines, areas, rings and furniture."""
    sheet = frame_sheet(game, floor, wording)
    draw_court(sheet)
    draw_tracks(sheet)
    for item in floor.items:
        if item.category not in SHOWN:
            sheet.shapes.extend(symbol(item, sheet.style(item.side), SIGN * sheet.least_m, 0))
    name_sides(sheet, floor.length_m)
    return (rectangle(box, Ink(WHITE)), *sheet.shapes)


def token_shapes(game: Game, floor: Floor, token: Token) -> tuple[Shape, ...]:
    """A token at its spot; what is down is crossed out, who is out is pale."""
    sheet = frame_sheet(game, floor)
    item, style = token.item, sheet.style(token.item.side)
    least = SIGN * sheet.least_m
    if token.up:
        return symbol(item, style, least, sheet.ball_kind(item.name))
    if item.category == "player":
        pale = SideStyle(style.shape, WHITE, MIDDLE, PALE, WHITE)
        return player(pale, item.x, item.y, max(item.radius, least), item.role)
    reach = 0.75 * least
    strokes = (
        ((item.x - reach, item.y - reach), (item.x + reach, item.y + reach)),
        ((item.x - reach, item.y + reach), (item.x + reach, item.y - reach)),
    )
    return (
        Disc(item.x, item.y, 1.15 * least, Ink(WHITE, PALE, 0.14 * least)),
        Lines(strokes, Ink(stroke=MIDDLE, width_m=0.26 * least)),
    )


def layered(tokens: Iterable[Token]) -> list[Token]:
    """Targets first, then bodies, players, balls on top."""
    layers = ("target", "body", "player", "ball")
    return sorted(tokens, key=lambda token: layers.index(token.item.category) if token.item.category in layers else 0)


def frame_of(
    game: Game,
    floor: Floor,
    tokens: tuple[Token, ...],
    box: Rectangle,
    words: tuple[str, str],
    wording: Wording = ENGLISH,
) -> Drawing:
    """A whole small plan; `words` are its title and its description."""
    shapes = [*court_shapes(game, floor, box, wording)]
    for token in layered(tokens):
        shapes.extend(token_shapes(game, floor, token))
    return Drawing(words[0], words[1], box, tuple(shapes))

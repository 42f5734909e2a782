"""The signs of a floor plan: players by side, targets, rings, balls, big bodies, furniture."""

from __future__ import annotations

from math import cos, pi, sin

from compose.draw.signs.palette import DARK, MIDDLE, PALE, WHITE, SideStyle
from compose.draw.signs.shapes import Disc, Ink, Label, Lines, Polygon, Shape, rectangle
from compose.staging.floor.values import THING_DEPTH_M, FloorItem, Rectangle

WIDE_M = 0.7  # a thing wider than this is drawn as what it covers of the floor


def player(style: SideStyle, x: float, y: float, radius: float, role: str | None = None) -> tuple[Shape, ...]:
    """A player: the shape of the side with its mark, or with the first letter of a role."""
    ink = Ink(style.fill, style.edge, radius * 0.16)
    body = _outline(style.shape, x, y, radius, ink)
    if role:
        low = 0.42 if style.shape != "triangle" else 0.5
        return body, Label(x, y - radius * low, role[0].upper(), radius * 1.2, style.mark, "middle", True)
    return body, _mark(style, x, y, radius)


def _outline(shape: str, x: float, y: float, radius: float, ink: Ink) -> Shape:
    if shape == "square":
        half = radius * 0.88
        return rectangle(Rectangle(x - half, y - half, x + half, y + half), ink)
    corners = {"triangle": (3, 1.22, -0.12), "diamond": (4, 1.15, 0.0)}.get(shape)
    if corners is None:
        return Disc(x, y, radius, ink)
    count, wide, low = corners
    turns = [pi / 2 + 2 * pi * order / count for order in range(count)]
    points = ((x + wide * radius * cos(turn), y + radius * (wide * sin(turn) + low)) for turn in turns)
    return Polygon(tuple(points), ink)


def _mark(style: SideStyle, x: float, y: float, radius: float) -> Shape:
    line = Ink(stroke=style.mark, width_m=radius * 0.26)
    if style.shape == "square":
        reach = radius * 0.52
        return Lines((((x - reach, y - reach), (x + reach, y + reach)),), line)
    if style.shape == "triangle":
        return Lines((((x - radius * 0.5, y - radius * 0.3), (x + radius * 0.5, y - radius * 0.3)),), line)
    if style.shape == "diamond":
        reach = radius * 0.45
        return Lines((((x - reach, y), (x + reach, y)), ((x, y - reach), (x, y + reach))), line)
    return Disc(x, y, radius * 0.34, Ink(style.mark))


def target(style: SideStyle, x: float, y: float, half: float) -> tuple[Shape, ...]:
    """A standing target as a waisted pin; the band round its neck tells owned from shared in grey."""
    outline = (
        (-0.62, -1.25),
        (0.62, -1.25),
        (0.5, -0.3),
        (0.3, 0.35),
        (0.42, 0.8),
        (0.25, 1.25),
        (-0.25, 1.25),
        (-0.42, 0.8),
        (-0.3, 0.35),
        (-0.5, -0.3),
    )
    points = tuple((x + half * across, y + half * up) for across, up in outline)
    body = Polygon(points, Ink(style.fill, style.edge, half * 0.18))
    band = Lines(
        (((x - half * 0.36, y + half * 0.2), (x + half * 0.36, y + half * 0.2)),),
        Ink(stroke=style.mark, width_m=half * 0.28),
    )
    return body, band


def low_target(style: SideStyle, x: float, y: float, half: float) -> tuple[Shape, ...]:
    """A target about as high as it is wide, such as a box or a bucket: broader above, with a band under its rim. It is
    no square, for players may be."""
    outline = ((-1.15, 0.85), (1.15, 0.85), (0.75, -0.85), (-0.75, -0.85))
    points = tuple((x + half * across, y + half * up) for across, up in outline)
    rim = Lines(
        (((x - half * 0.95, y + half * 0.35), (x + half * 0.95, y + half * 0.35)),),
        Ink(stroke=style.mark, width_m=half * 0.28),
    )
    return Polygon(points, Ink(style.fill, style.edge, half * 0.18)), rim


def wide_thing(style: SideStyle, x: float, y: float, width_m: float) -> tuple[Shape, ...]:
    """A goal, a mat, a box top: the floor it covers, facing along the court."""
    half = THING_DEPTH_M / 2
    box = Rectangle(x - half, y - width_m / 2, x + half, y + width_m / 2)
    bar = Lines((((x, box.bottom + half), (x, box.top - half)),), Ink(stroke=style.mark, width_m=half * 0.4))
    return rectangle(box, Ink(style.fill, style.edge, half * 0.35)), bar


def ring(style: SideStyle, x: float, y: float, radius: float) -> tuple[Shape, ...]:
    """A ring: an open circle."""
    return (
        Disc(x, y, radius * 0.85, Ink(WHITE, style.edge, radius * 0.44)),
        Disc(x, y, radius * 0.85, Ink(None, style.fill, radius * 0.2)),
    )


def ball(kind: int, x: float, y: float, radius: float) -> tuple[Shape, ...]:
    """A ball; the first kind white, the second dark, the third with a cross, the fourth with a dot."""
    fill = DARK if kind % 4 == 1 else WHITE
    body = Disc(x, y, radius, Ink(fill, DARK, radius * 0.26))
    line = Ink(stroke=DARK, width_m=radius * 0.2)
    if kind % 4 == 2:
        reach = radius * 0.6
        return body, Lines((((x - reach, y), (x + reach, y)), ((x, y - reach), (x, y + reach))), line)
    if kind % 4 == 3:
        return body, Disc(x, y, radius * 0.4, Ink(DARK))
    return (body,)


def body(style: SideStyle, x: float, y: float, radius: float) -> tuple[Shape, ...]:
    """A big body at its own size."""
    reach = radius * 0.62
    seams = Lines(
        (((x - reach, y - reach), (x + reach, y + reach)), ((x - reach, y + reach), (x + reach, y - reach))),
        Ink(stroke=MIDDLE, width_m=radius * 0.06),
    )
    return Disc(x, y, radius, Ink(style.fill if style.shape != "plain" else PALE, style.edge, radius * 0.1)), seams


def furniture(x: float, y: float, half: float) -> tuple[Shape, ...]:
    """A bench, a mat, a box that stands on the floor."""
    box = Rectangle(x - half, y - half * 0.7, x + half, y + half * 0.7)
    cross = Lines(
        (((box.left, box.bottom), (box.right, box.top)), ((box.left, box.top), (box.right, box.bottom))),
        Ink(stroke=MIDDLE, width_m=half * 0.1),
    )
    return rectangle(box, Ink(PALE, DARK, half * 0.14)), cross


def symbol(item: FloorItem, style: SideStyle, least: float, ball_kind: int) -> tuple[Shape, ...]:
    """The sign of a thing on the floor, no smaller than `least` metres from its middle to its rim."""
    x, y, radius = item.x, item.y, max(item.radius, least)
    match item.category:
        case "player":
            return player(style, x, y, radius, item.role)
        case "ball":
            lift = 1.3 * least if item.on else 0.0
            return ball(ball_kind, x, y + lift, max(item.radius, least * 0.72))
        case "ring":
            return ring(style, x, y, radius)
        case "body":
            return body(style, x, y, radius)
        case "furniture":
            return furniture(x, y, radius)
        case _:
            if item.width_m > WIDE_M:
                return wide_thing(style, x, y, item.width_m)
            sign = low_target if item.height_m <= item.width_m <= 2 * item.height_m else target
            return sign(style, x, y, least)

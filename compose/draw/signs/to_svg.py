"""Shapes → SVG text: small, valid, the same bytes for the same drawing."""

from __future__ import annotations

from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from compose.draw.signs.shapes import Disc, Drawing, Ink, Label, Lines, Point, Polygon, Shape
from compose.staging.floor.values import Rectangle

PER_METRE = 50.0  # user units in a metre: whole numbers and one decimal are then fine enough
FONTS = "'Bitstream Vera Sans','DejaVu Sans',Verdana,Arial,sans-serif"


def svg_of(drawing: Drawing, width_px: int = 1000, key: str = "", more: tuple[str, ...] = ()) -> str:
    """The drawing as a document of its own, `width_px` wide where it is shown at its own size.

    `key` goes before its ids, for a page that holds several drawings. `more` is SVG to go on top of it.
    """
    box = drawing.box
    long, high = box.length * PER_METRE, box.width * PER_METRE
    body = [*marks_of(drawing.shapes, box), *more]
    return "\n".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_number(long)} {_number(high)}" '
            f'width="{width_px}" height="{_number(width_px * high / long)}" role="img" '
            f'aria-labelledby="{key}title {key}desc" font-family={quoteattr(FONTS)}>',
            f'<title id="{key}title">{escape(drawing.title)}</title>',
            f'<desc id="{key}desc">{escape(drawing.description)}</desc>',
            *body,
            "</svg>\n",
        )
    )


def marks_of(shapes: Iterable[Shape], box: Rectangle) -> list[str]:
    """Each shape as an element of SVG, placed as in a drawing with that box."""
    return [_shape(shape, box) for shape in shapes]


def _number(value: float) -> str:
    """One decimal, without a tail of nothing and without a minus before it."""
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text


def _at(point: Point, box: Rectangle) -> str:
    return f"{_number((point[0] - box.left) * PER_METRE)} {_number((box.top - point[1]) * PER_METRE)}"


def _run(points: Iterable[Point], box: Rectangle) -> str:
    return "M" + "L".join(_at(point, box) for point in points)


def _paint(ink: Ink) -> str:
    parts = [f'fill="{ink.fill or "none"}"']
    if ink.stroke:
        parts.append(f'stroke="{ink.stroke}" stroke-width="{_number(ink.width_m * PER_METRE)}"')
    if ink.dash:
        parts.append(f'stroke-dasharray="{" ".join(_number(part * PER_METRE) for part in ink.dash)}"')
    return " ".join(parts)


def _shape(shape: Shape, box: Rectangle) -> str:
    match shape:
        case Polygon():
            return f'<path d="{_run(shape.points, box)}Z" {_paint(shape.ink)}/>'
        case Lines():
            return f'<path d="{"".join(_run(run, box) for run in shape.runs)}" {_paint(shape.ink)}/>'
        case Disc():
            across, down = _at((shape.x, shape.y), box).split()
            return f'<circle cx="{across}" cy="{down}" r="{_number(shape.radius * PER_METRE)}" {_paint(shape.ink)}/>'
        case Label():
            return _label(shape, box)


def _label(label: Label, box: Rectangle) -> str:
    across, down = _at((label.x, label.y), box).split()
    parts = [f'x="{across}" y="{down}" font-size="{_number(label.size_m * PER_METRE)}" fill="{label.colour}"']
    if label.anchor != "start":
        parts.append(f'text-anchor="{label.anchor}"')
    if label.bold:
        parts.append('font-weight="bold"')
    if label.turned:
        parts.append(f'transform="rotate({_number(-label.turned)} {across} {down})"')
    if label.halo:
        wide = _number(label.size_m * PER_METRE * 0.3)
        parts.append(f'stroke="{label.halo}" stroke-width="{wide}" stroke-linejoin="round" paint-order="stroke"')
    return f"<text {' '.join(parts)}>{escape(label.text)}</text>"

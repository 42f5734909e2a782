"""Shapes → a reportlab canvas, to scale, with letters as letters."""

from __future__ import annotations

from typing import Any

from compose.draw.card.fonts import BOLD, PLAIN
from compose.draw.signs.shapes import Disc, Drawing, Ink, Label, Lines, Polygon


def draw_on(canvas: Any, drawing: Drawing, x: float, y: float, width: float) -> None:
    """Put the drawing on the page with its lower left corner at (x, y) and that width, all in points."""
    scale = width / drawing.box.length
    canvas.saveState()
    canvas.translate(x - drawing.box.left * scale, y - drawing.box.bottom * scale)
    canvas.setLineJoin(1)
    for shape in drawing.shapes:
        if isinstance(shape, Label):
            _label(canvas, shape, scale)
        else:
            _figure(canvas, shape, scale)
    canvas.restoreState()


def _figure(canvas: Any, shape: Polygon | Disc | Lines, scale: float) -> None:
    fill, stroke = _use(canvas, shape.ink, scale)
    if isinstance(shape, Disc):
        canvas.circle(shape.x * scale, shape.y * scale, shape.radius * scale, stroke=stroke, fill=fill)
        return
    path = canvas.beginPath()
    runs = (shape.points,) if isinstance(shape, Polygon) else shape.runs
    for run in runs:
        path.moveTo(run[0][0] * scale, run[0][1] * scale)
        for across, up in run[1:]:
            path.lineTo(across * scale, up * scale)
    if isinstance(shape, Polygon):
        path.close()
    canvas.drawPath(path, stroke=stroke, fill=fill)


def _use(canvas: Any, ink: Ink, scale: float) -> tuple[int, int]:
    """Set the colours and the stroke; gives whether to fill and whether to stroke."""
    if ink.fill:
        canvas.setFillColor(ink.fill)
    if ink.stroke:
        canvas.setStrokeColor(ink.stroke)
        canvas.setLineWidth(ink.width_m * scale)
        canvas.setDash(*((ink.dash[0] * scale, ink.dash[1] * scale) if ink.dash else ([],)))
    return int(bool(ink.fill)), int(bool(ink.stroke))


def _label(canvas: Any, label: Label, scale: float) -> None:
    """A halo is a plate under the words: a rim of letters would be read as the same words once more."""
    font, size = BOLD if label.bold else PLAIN, label.size_m * scale
    wide = canvas.stringWidth(label.text, font, size)
    start = {"start": 0.0, "middle": 0.5, "end": 1.0}[label.anchor] * -wide
    canvas.saveState()
    canvas.translate(label.x * scale, label.y * scale)
    canvas.rotate(label.turned)
    if label.halo:
        canvas.setFillColor(label.halo)
        rim = 0.12 * size
        canvas.roundRect(start - rim, -0.22 * size, wide + 2 * rim, 1.06 * size, 0.2 * size, stroke=0, fill=1)
    canvas.setFont(font, size)
    canvas.setFillColor(label.colour)
    canvas.drawString(start, 0, label.text)
    canvas.restoreState()

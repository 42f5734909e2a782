"""The plan alone on a page of paper, under the name of the game: upright or lying, as it becomes largest."""

from __future__ import annotations

from io import BytesIO

from compose.draw.card.fonts import BOLD, load_fonts
from compose.draw.card.pdf import MARGIN_PT, PAPERS_PT, canvas_for
from compose.draw.signs.palette import ACCENT
from compose.draw.signs.shapes import Drawing
from compose.draw.signs.to_canvas import draw_on
from compose.staging.resolved import resolved
from grammar.game import Game

NAME_PT = 22.0  # our choice: a name that is read from some steps away


def plan_pdf_of(plan: Drawing, game: Game, language: str, paper: str = "A4") -> bytes:
    """The page as PDF bytes, with the game's name and, told to who looks for it, its credit; `paper` is "A4" or
    "Letter"."""
    load_fonts()
    name, author = game.title, "; ".join(resolved(game).told.credit)
    upright = PAPERS_PT[paper]
    sizes = {page: _width_pt(plan, page) for page in (upright, upright[::-1])}
    (wide, high), width = max(sizes.items(), key=lambda each: each[1])
    buffer = BytesIO()
    canvas = canvas_for(buffer, paper, language, plan.title, author, plan.description)
    canvas.setPageSize((wide, high))
    canvas.setFillColor(ACCENT)
    canvas.setFont(BOLD, min(NAME_PT, NAME_PT * (wide - 2 * MARGIN_PT) / canvas.stringWidth(name, BOLD, NAME_PT)))
    canvas.drawString(MARGIN_PT, high - MARGIN_PT - NAME_PT, name)
    top = high - MARGIN_PT - 2 * NAME_PT
    draw_on(canvas, plan, (wide - width) / 2, top - width * plan.box.width / plan.box.length, width)
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def _width_pt(plan: Drawing, page: tuple[float, float]) -> float:
    """How wide the plan can be on such a page, below the name."""
    wide, high = (each - 2 * MARGIN_PT for each in page)
    return min(wide, (high - 2 * NAME_PT) * plan.box.length / plan.box.width)

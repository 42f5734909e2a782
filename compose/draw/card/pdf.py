"""Card → one page of PDF, A4 or Letter: the plan to scale, the text in two columns, nothing cut off.

The same card gives the same bytes. Words are text in embedded fonts, so they can be searched and read out.
"""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from typing import Any

from compose.draw.card.blocks import (
    Block,
    draw_blocks,
    footer_blocks,
    headline,
    in_columns,
    section_blocks,
    tall,
)
from compose.draw.card.card import Card
from compose.draw.card.fonts import load_fonts
from compose.draw.signs.palette import ACCENT, PALE, WARNING
from compose.draw.signs.to_canvas import draw_on
from grammar.finding import Basis, Finding, Outcome, Severity
from grammar.frozen import frozen
from grammar.span import nowhere

PAPERS_PT = {"A4": (595.28, 841.89), "Letter": (612.0, 792.0)}
MARGIN_PT = 34.0
GUTTER_PT = 18.0
PAD_PT = 6.0
SIZES_PT = (13.0, 12.5, 12.0, 11.5, 11.0, 10.5, 10.0, 9.5, 9.0, 8.5, 8.0, 7.5, 7.0)
PLAN_LEAST_PT = 175.0  # our choice: a plan lower than this cannot be read from a step away
PLAN_TIGHT_PT = 120.0  # the same where the letters are at their smallest
READABLE_PT = 9.0  # our choice: letters are not made smaller than this for a plan higher than the least
TONES = {"care": ("#fdf4ea", WARNING), "proof": ("#eef3fa", ACCENT)}


@frozen
class Layout:
    """Everything of a page in one size of letters, measured."""

    size: float
    head: list[Block]
    columns: tuple[list[Block], list[Block]]
    boxes: tuple[tuple[str, list[Block]], ...]
    foot: list[Block]
    plan_pt: float

    @property
    def gap(self) -> float:
        return 0.9 * self.size


def pdf_of(card: Card, paper: str = "A4") -> Outcome[bytes]:
    """The page as PDF bytes; no value and a finding where even the smallest letters do not fit.

    `paper` is "A4" or "Letter". A letter that the fonts lack is told as a warning.
    """
    known = load_fonts()
    layout = fitting(card, paper)
    if layout is None:
        return Outcome(None, (too_long(card, paper),))
    return Outcome(_drawn(card, layout, paper), tuple(missing_letters(card, known)))


def _measured(card: Card, paper: str, size: float) -> Layout:
    """The page in one size of letters; `plan_pt` is the height that is left for the plan."""
    wide, high = PAPERS_PT[paper]
    width = wide - 2 * MARGIN_PT
    column = (width - GUTTER_PT) / 2
    plain = [section_blocks(part, column, size) for part in card.sections if part.tone == "plain"]
    boxes = tuple(
        (part.tone, section_blocks(part, width - 2 * PAD_PT, size)) for part in card.sections if part.tone != "plain"
    )
    head, foot = headline(card, width, size), footer_blocks(card, width, size)
    layout = Layout(size, head, in_columns(plain), boxes, foot, 0.0)
    used = tall(head) + max(tall(part) for part in layout.columns) + tall(foot) + 3.4 * layout.gap
    used += sum(tall(blocks) + 2 * PAD_PT + 0.6 * layout.gap for _tone, blocks in boxes)
    return Layout(size, head, layout.columns, boxes, foot, high - 2 * MARGIN_PT - used)


def fitting(card: Card, paper: str) -> Layout | None:
    """The largest letters that leave a readable plan, found by halving the sizes: each is costly to measure."""
    wide = PAPERS_PT[paper][0] - 2 * MARGIN_PT
    most = wide * card.plan.box.width / card.plan.box.length
    best, low, high = None, 0, len(SIZES_PT)
    while low < high:
        middle = (low + high) // 2
        layout = _measured(card, paper, SIZES_PT[middle])
        least = PLAN_LEAST_PT if middle < len(SIZES_PT) - 3 else PLAN_TIGHT_PT
        if SIZES_PT[middle] >= READABLE_PT:
            least = max(least, card.plan_pt)
        if layout.plan_pt >= min(least, most):
            best, high = layout, middle
        else:
            low = middle + 1
    return best


def _drawn(card: Card, layout: Layout, paper: str) -> bytes:
    buffer = BytesIO()
    canvas = canvas_for(buffer, paper, card.language, card.title, card.author, card.about)
    draw_page(canvas, card, layout, paper)
    canvas.save()
    return buffer.getvalue()


def canvas_for(buffer: BytesIO, paper: str, language: str, title: str, author: str, subject: str) -> Any:
    """A canvas that says what it is; the same drawing gives the same bytes."""
    from reportlab.pdfgen.canvas import Canvas

    canvas = Canvas(buffer, pagesize=PAPERS_PT[paper], invariant=1, pageCompression=1, lang=language)
    canvas.setTitle(title)
    canvas.setAuthor(author)
    canvas.setSubject(subject)
    canvas.setCreator("Ruleweave")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    return canvas


def draw_page(canvas: Any, card: Card, layout: Layout, paper: str) -> None:
    """A whole page with the card."""
    wide, high = PAPERS_PT[paper]
    width, gap = wide - 2 * MARGIN_PT, layout.gap
    y = draw_blocks(canvas, layout.head, MARGIN_PT, high - MARGIN_PT) - 0.7 * gap
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.2)
    canvas.line(MARGIN_PT, y, wide - MARGIN_PT, y)
    y = draw_plan(canvas, card, layout.plan_pt, y - 0.7 * gap, width) - 0.7 * gap
    ends = [
        draw_blocks(canvas, blocks, MARGIN_PT + order * ((width + GUTTER_PT) / 2), y)
        for order, blocks in enumerate(layout.columns)
    ]
    canvas.setStrokeColor(PALE)
    canvas.setLineWidth(0.5)
    canvas.line(wide / 2, y, wide / 2, min(ends))
    y = min(ends) - 0.7 * gap
    for tone, blocks in layout.boxes:
        y = draw_box(canvas, tone, blocks, y, width) - 0.6 * gap
    draw_blocks(canvas, layout.foot, MARGIN_PT, MARGIN_PT + tall(layout.foot))
    canvas.showPage()


def draw_plan(canvas: Any, card: Card, most_pt: float, top: float, width: float) -> float:
    """The plan as large as there is room, in the middle; gives its lower edge."""
    box = card.plan.box
    wide = min(width, most_pt * box.length / box.width)
    high = wide * box.width / box.length
    draw_on(canvas, card.plan, MARGIN_PT + (width - wide) / 2, top - high, wide)
    return top - high


def draw_box(canvas: Any, tone: str, blocks: list[Block], top: float, width: float) -> float:
    """A tinted box with an edge in its own colour; gives its lower edge."""
    fill, edge = TONES[tone]
    high = tall(blocks) + 2 * PAD_PT
    canvas.setFillColor(fill)
    canvas.setStrokeColor(edge)
    canvas.setLineWidth(0.8)
    canvas.roundRect(MARGIN_PT, top - high, width, high, 4, stroke=1, fill=1)
    draw_blocks(canvas, blocks, MARGIN_PT + PAD_PT, top - PAD_PT)
    return top - high


def too_long(card: Card, paper: str) -> Finding:
    """How much of a page is missing."""
    layout = _measured(card, paper, SIZES_PT[-1])
    short = PLAN_TIGHT_PT - layout.plan_pt
    return Finding(
        "D-card-full",
        Severity.ERROR,
        f"The card of {card.title} does not fit on one page of {paper}: {short / 28.35:.1f} cm are missing.",
        nowhere("(the card)"),
        "Shorten the rules in the author's own words, the cues and the cautions, or print it on larger paper.",
        basis=Basis.COMPUTED,
        numbers=(("short_cm", round(short / 28.35, 2)), ("smallest_letters_pt", SIZES_PT[-1])),
    )


def missing_letters(card: Card, known: frozenset[int]) -> Iterator[Finding]:
    """The letters that would be printed as boxes."""
    text = (
        card.title + card.subtitle + card.about + "".join(card.footer) + "".join(value for _label, value in card.facts)
    )
    text += "".join(line for part in card.sections for line in (part.heading, *part.lines))
    missing = sorted({letter for letter in text if ord(letter) not in known and not letter.isspace()})
    if missing:
        yield Finding(
            "D-letters",
            Severity.WARNING,
            f"The card's fonts have no {', '.join(missing)}.",
            nowhere("(the card)"),
            "Write these letters another way.",
        )

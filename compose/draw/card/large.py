"""Card → two pages of PDF in large print: the plan and the setting up on the first, playing on the second."""

from __future__ import annotations

from io import BytesIO
from typing import Any

from compose.draw.card.blocks import Block, draw_blocks, footer_blocks, headline, section_blocks, tall
from compose.draw.card.card import Card
from compose.draw.card.fonts import load_fonts
from compose.draw.card.pdf import (
    MARGIN_PT,
    PAD_PT,
    PAPERS_PT,
    canvas_for,
    draw_box,
    draw_plan,
    missing_letters,
    too_long,
)
from compose.draw.signs.palette import ACCENT
from grammar.finding import Basis, Finding, Outcome, Severity
from grammar.frozen import frozen
from grammar.span import nowhere

SIZES_PT = (20.0, 19.0, 18.0, 17.0, 16.0, 15.0, 14.0, 13.0, 12.0, 11.0, 10.0, 9.0, 8.5, 8.0)
LARGE_PT = 14.0  # common practice: print for poor eyes starts at 14 points, 16 and more is better
PLAN_WIDE = 0.75  # of the page's width, at least: then the words of the plan are large print too (our choice)


@frozen
class TwoPages:
    """Both pages in one size of letters, measured, in points: `plan_pt` is what the first leaves to the plan,
    `least_pt` what the plan needs, `room` what stays free on the second."""

    size: float
    head: list[Block]
    first: list[Block]
    second: list[Block]
    boxes: tuple[tuple[str, list[Block]], ...]
    foot: list[Block]
    plan_pt: float
    least_pt: float
    room: float

    @property
    def fits(self) -> bool:
        return self.plan_pt >= self.least_pt and self.room >= 0


def large_pdf_of(card: Card, paper: str = "A4") -> Outcome[bytes]:
    """The two pages as PDF bytes, in the largest letters that fit; a note where they are not large any more."""
    known = load_fonts()
    laid = two_pages(card, paper)
    if laid.value is None:
        return Outcome(None, laid.findings)
    buffer = BytesIO()
    canvas = canvas_for(buffer, paper, card.language, card.title, card.author, card.about)
    draw_two_pages(canvas, card, laid.value, paper)
    canvas.save()
    return Outcome(buffer.getvalue(), (*missing_letters(card, known), *laid.findings))


def two_pages(card: Card, paper: str) -> Outcome[TwoPages]:
    """The two pages laid out; the fonts must be loaded."""
    found = next((pages for size in SIZES_PT for pages in _parted(card, paper, size) if pages.fits), None)
    if found is None:
        return Outcome(None, (too_long(card, paper),))
    return Outcome(found, (_not_large(card, found.size),) if found.size < LARGE_PT else ())


def _parted(card: Card, paper: str, size: float) -> list[TwoPages]:
    """Every way to part the sections between the pages, those with most on the first page last."""
    wide, high = PAPERS_PT[paper]
    width, page = wide - 2 * MARGIN_PT, high - 2 * MARGIN_PT
    plain = [section_blocks(part, width, size) for part in card.sections if part.tone == "plain"]
    boxes = tuple(
        (part.tone, section_blocks(part, width - 2 * PAD_PT, size)) for part in card.sections if part.tone != "plain"
    )
    head, foot = headline(card, width, 0.92 * size), footer_blocks(card, width, 0.75 * size)
    boxed = sum(tall(blocks) + 2 * PAD_PT + 0.6 * size for _tone, blocks in boxes)
    least = PLAN_WIDE * width * card.plan.box.width / card.plan.box.length
    ways = []
    for cut in range(len(plain) + 1):
        first = [block for section in plain[:cut] for block in section]
        second = [block for section in plain[cut:] for block in section]
        plan_pt = page - tall(head) - tall(first) - 2.2 * size
        room = page - tall(second) - boxed - tall(foot) - 1.2 * size
        ways.append(TwoPages(size, head, first, second, boxes, foot, plan_pt, least, room))
    return ways


def draw_two_pages(canvas: Any, card: Card, pages: TwoPages, paper: str) -> None:
    """Draw both pages and end them."""
    wide, high = PAPERS_PT[paper]
    width, size = wide - 2 * MARGIN_PT, pages.size
    y = draw_blocks(canvas, pages.head, MARGIN_PT, high - MARGIN_PT) - 0.5 * size
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.6)
    canvas.line(MARGIN_PT, y, wide - MARGIN_PT, y)
    y = draw_plan(canvas, card, pages.plan_pt, y - 0.5 * size, width) - 0.6 * size
    draw_blocks(canvas, pages.first, MARGIN_PT, y)
    canvas.showPage()
    y = draw_blocks(canvas, pages.second, MARGIN_PT, high - MARGIN_PT) - 0.8 * size
    for tone, blocks in pages.boxes:
        y = draw_box(canvas, tone, blocks, y, width) - 0.6 * size
    draw_blocks(canvas, pages.foot, MARGIN_PT, MARGIN_PT + tall(pages.foot))
    canvas.showPage()


def _not_large(card: Card, size: float) -> Finding:
    return Finding(
        "D-not-large",
        Severity.NOTE,
        f"The card of {card.title} fits on two pages only in letters of {size:g} points, which is not large print.",
        nowhere("(the card)"),
        f"Shorten the rules in the author's own words, or print it on larger paper; {LARGE_PT:g} points are asked for.",
        basis=Basis.COMPUTED,
        numbers=(("letters_pt", size),),
    )

"""The sheet of a long lesson on as many pages as it needs: what is done first, then a game below the other."""

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
from grammar.finding import Outcome
from grammar.frozen import frozen

SIZE_PT = 10.5  # our choice: letters that are read at arm's length
PLAN_PART = 0.45  # of the first page's height, at most (our choice)


@frozen
class Page:
    """A page that is being written from `y` down, in points; a new one is begun where there is no room left."""

    canvas: Any
    high: float
    y: float

    def room_for(self, need_pt: float) -> Page:
        """This page, or the next one."""
        if self.y - need_pt >= MARGIN_PT:
            return self
        self.canvas.showPage()
        return Page(self.canvas, self.high, self.high - MARGIN_PT)

    def at(self, y: float) -> Page:
        """The same page, written as far as this."""
        return Page(self.canvas, self.high, y)


def many_pages(sheet: Card, paper: str) -> Outcome[bytes]:
    """The pages as PDF bytes; no value where a single box of it is longer than a page."""
    known, (wide, high) = load_fonts(), PAPERS_PT[paper]
    width, buffer = wide - 2 * MARGIN_PT, BytesIO()
    canvas = canvas_for(buffer, paper, sheet.language, sheet.title, sheet.author, sheet.about)
    page = Page(canvas, high, high - MARGIN_PT)
    page = page.at(draw_blocks(canvas, headline(sheet, width, SIZE_PT), MARGIN_PT, page.y) - SIZE_PT)
    page = page.at(draw_plan(canvas, sheet, PLAN_PART * high, page.y, width) - SIZE_PT)
    for part in sheet.sections:
        if part.tone == "plain":
            page = _section(page, section_blocks(part, width, SIZE_PT))
            continue
        blocks = section_blocks(part, width - 2 * PAD_PT, SIZE_PT)
        need = tall(blocks) + 2 * PAD_PT
        if need > high - 2 * MARGIN_PT:
            return Outcome(None, (too_long(sheet, paper),))
        page = page.room_for(need)
        page = page.at(draw_box(canvas, part.tone, blocks, page.y, width) - 0.6 * SIZE_PT)
    foot = footer_blocks(sheet, width, SIZE_PT)
    page = page.room_for(tall(foot))
    draw_blocks(canvas, foot, MARGIN_PT, MARGIN_PT + tall(foot))
    canvas.showPage()
    canvas.save()
    return Outcome(buffer.getvalue(), tuple(missing_letters(sheet, known)))


def _section(page: Page, blocks: list[Block]) -> Page:
    """A heading with its list; whole if a page can hold it, and a heading never stands alone."""
    if tall(blocks) < 0.5 * page.high:
        page = page.room_for(tall(blocks))
    for block, following in zip(blocks, [*blocks[1:], None], strict=True):
        need = block.height + (following.tall if block.head and following is not None else 0.0)
        page = page.room_for(need)
        page = page.at(draw_blocks(page.canvas, [block], MARGIN_PT, page.y) - (following.above if following else 0.0))
    return page.at(page.y - 0.75 * SIZE_PT)

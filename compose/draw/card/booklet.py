"""Many cards → one PDF: a contents page with links, then one card on each page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from io import BytesIO
from typing import Any

from compose.draw.card.blocks import paragraph
from compose.draw.card.card import Card
from compose.draw.card.fonts import BOLD, PLAIN, load_fonts
from compose.draw.card.large import TwoPages, draw_two_pages, two_pages
from compose.draw.card.pdf import (
    MARGIN_PT,
    PAPERS_PT,
    Layout,
    canvas_for,
    draw_page,
    fitting,
    missing_letters,
    too_long,
)
from compose.draw.signs.palette import ACCENT, DARK, MIDDLE, PALE
from compose.telling.wording import ENGLISH, Wording
from grammar.finding import Finding, Outcome
from grammar.frozen import frozen

ROW_PT = 31.0  # a line of the contents: title and facts, one below the other
HEAD_PT = 64.0
FOOT_PT = 12.0

KeepGoing = Callable[[str, int, int], bool]


@frozen
class Booklet:
    """A booklet as PDF bytes, and the titles of the cards that are in it."""

    pdf: bytes
    titles: tuple[str, ...]


def booklet_of(
    cards: Sequence[Card],
    title: str,
    paper: str = "A4",
    keep_going: KeepGoing = lambda what, done, of: True,
    wording: Wording = ENGLISH,
    large: bool = False,
) -> Outcome[Booklet]:
    """The booklet, or with `large` one of large print, two pages a card. A card that does not fit is left out and told.

    `keep_going` hears of each page done; where it says no, there is no value.
    """
    known = load_fonts()
    laid, findings = list[tuple[Card, Layout | TwoPages]](), list[Finding]()
    for order, card in enumerate(cards):
        if not keep_going("cards laid out", order, len(cards)):
            return Outcome(None, tuple(findings))
        made: Outcome[TwoPages] | Outcome[Layout] = two_pages(card, paper) if large else _one_page(card, paper)
        findings += made.findings
        if made.value is not None:
            findings += missing_letters(card, known)
            laid.append((card, made.value))
    if not laid:
        return Outcome(None, tuple(findings))
    buffer = BytesIO()
    authors = "; ".join(dict.fromkeys(card.author for card, _layout in laid if card.author))
    canvas = canvas_for(buffer, paper, wording.language, title, authors, wording.say("Contents"))
    each = 2 if large else 1
    before = _draw_contents(canvas, [card for card, _layout in laid], title, paper, wording, each)
    for order, (card, layout) in enumerate(laid):
        if not keep_going("cards drawn", order, len(laid)):
            return Outcome(None, tuple(findings))
        _mark_page(canvas, card, before + each * order + 1, order, paper)
        if isinstance(layout, TwoPages):
            draw_two_pages(canvas, card, layout, paper)
        else:
            draw_page(canvas, card, layout, paper)
    canvas.save()
    return Outcome(Booklet(buffer.getvalue(), tuple(card.title for card, _layout in laid)), tuple(findings))


def _one_page(card: Card, paper: str) -> Outcome[Layout]:
    layout = fitting(card, paper)
    return Outcome(layout, () if layout is not None else (too_long(card, paper),))


def _draw_contents(canvas: Any, cards: Sequence[Card], title: str, paper: str, wording: Wording, each: int) -> int:
    """The contents on as many pages as they need, each card on so many pages; gives how many they are."""
    _wide, high = PAPERS_PT[paper]
    on_page = int((high - 2 * MARGIN_PT - HEAD_PT - FOOT_PT) // ROW_PT)
    pages = -(-len(cards) // on_page)
    for page in range(pages):
        y = _draw_heading(canvas, title if page == 0 else "", paper, wording)
        for order in range(page * on_page, min(len(cards), (page + 1) * on_page)):
            _draw_row(canvas, cards[order], order, pages + each * order + 1, y, paper)
            y -= ROW_PT
        canvas.showPage()
    return pages


def _draw_heading(canvas: Any, title: str, paper: str, wording: Wording) -> float:
    wide, high = PAPERS_PT[paper]
    y = high - MARGIN_PT
    if title:
        size = min(22.0, (wide - 2 * MARGIN_PT) / (0.68 * len(title) + 1))
        block = paragraph(title, wide - 2 * MARGIN_PT, fontName=BOLD, fontSize=size, textColor=ACCENT)
        block.paragraph.drawOn(canvas, MARGIN_PT, y - block.height)
        y -= block.height + 5
    canvas.setFont(BOLD, 11)
    canvas.setFillColor(MIDDLE)
    canvas.drawString(MARGIN_PT, y - 12, wording.say("Contents"))
    canvas.setStrokeColor(ACCENT)
    canvas.setLineWidth(1.2)
    canvas.line(MARGIN_PT, y - 18, wide - MARGIN_PT, y - 18)
    return y - 22


def _in_contents(card: Card) -> str:
    """The title, and what it means where the card says it."""
    return f"{card.title} – {card.subtitle}" if card.subtitle else card.title


def _draw_row(canvas: Any, card: Card, order: int, page: int, top: float, paper: str) -> None:
    """Title with dots to the page, ages and players below it; the whole line is a link."""
    wide, _high = PAPERS_PT[paper]
    right = wide - MARGIN_PT
    name = _cut(canvas, _in_contents(card), BOLD, 11, right - MARGIN_PT - 60)
    canvas.setFillColor(DARK)
    canvas.setFont(BOLD, 11)
    canvas.drawString(MARGIN_PT, top - 13, name)
    canvas.drawRightString(right, top - 13, str(page))
    canvas.setStrokeColor(PALE)
    canvas.setLineWidth(0.8)
    canvas.setDash(1, 3)
    canvas.line(MARGIN_PT + canvas.stringWidth(name, BOLD, 11) + 6, top - 11, right - 26, top - 11)
    canvas.setDash()
    canvas.setFont(PLAIN, 8.5)
    canvas.setFillColor(MIDDLE)
    facts = "  ·  ".join(f"{label} {value}" for label, value in card.facts[:3])
    canvas.drawString(MARGIN_PT, top - 25, _cut(canvas, facts, PLAIN, 8.5, right - MARGIN_PT - 40))
    canvas.linkAbsolute("", f"card{order}", (MARGIN_PT, top - 28, right, top - 2), Border="[0 0 0]")


def _cut(canvas: Any, text: str, font: str, size: float, room: float) -> str:
    if canvas.stringWidth(text, font, size) <= room:
        return text
    while text and canvas.stringWidth(f"{text}…", font, size) > room:
        text = text[:-1].rstrip()
    return f"{text}…"


def _mark_page(canvas: Any, card: Card, page: int, order: int, paper: str) -> None:
    """A bookmark, an entry in the outline and the number of the page."""
    wide, _high = PAPERS_PT[paper]
    canvas.bookmarkPage(f"card{order}")
    canvas.addOutlineEntry(_in_contents(card), f"card{order}", 0)
    canvas.setFont(PLAIN, 8)
    canvas.setFillColor(MIDDLE)
    canvas.drawRightString(wide - MARGIN_PT, MARGIN_PT - 16, str(page))

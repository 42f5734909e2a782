"""The sheet of a lesson as PDF: on one page, or on as many as it needs."""

from __future__ import annotations

from compose.draw.card.card import Card
from compose.draw.card.large import large_pdf_of
from compose.draw.card.pdf import pdf_of
from compose.draw.lesson.pages import many_pages
from grammar.finding import Outcome


def lesson_pdf_of(sheet: Card, paper: str = "A4") -> Outcome[bytes]:
    """The sheet, in the largest letters that fit."""
    one_page = pdf_of(sheet, paper)
    if one_page.value is not None:
        return one_page
    two_pages = large_pdf_of(sheet, paper)
    return two_pages if two_pages.value is not None else many_pages(sheet, paper)

"""The sheet of a lesson as PDF: on one page, or on two where there is more to say than one holds."""

from __future__ import annotations

from compose.draw.card.card import Card
from compose.draw.card.large import large_pdf_of
from compose.draw.card.pdf import pdf_of
from grammar.finding import Outcome


def lesson_pdf_of(sheet: Card, paper: str = "A4") -> Outcome[bytes]:
    """The sheet, in the largest letters that fit."""
    one_page = pdf_of(sheet, paper)
    return one_page if one_page.value is not None else large_pdf_of(sheet, paper)

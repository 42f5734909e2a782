"""The fonts of the card: Bitstream Vera, which comes with reportlab and may be embedded."""

from __future__ import annotations

from functools import cache

PLAIN, BOLD, SLANTED = "Card", "CardBold", "CardSlanted"
FILES = {PLAIN: "Vera.ttf", BOLD: "VeraBd.ttf", SLANTED: "VeraIt.ttf"}


@cache
def load_fonts() -> frozenset[int]:
    """Make the fonts known to reportlab; gives the letters (code points) that all of them can print."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    known: list[set[int]] = []
    for name, file in FILES.items():
        font = TTFont(name, file)
        pdfmetrics.registerFont(font)
        known.append(set(font.face.charToGlyph))
    pdfmetrics.registerFontFamily(PLAIN, normal=PLAIN, bold=BOLD, italic=SLANTED, boldItalic=BOLD)
    return frozenset(set.intersection(*known))

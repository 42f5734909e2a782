"""A PDF read back as boxes of words: where each piece of text stands and how wide it is, from the file alone."""

from __future__ import annotations

from io import BytesIO

from attrs import frozen
from pypdf import PdfReader


@frozen
class Piece:
    """A run of text on a page, in points from the lower left corner; `turned` where it does not run level."""

    left: float
    base: float
    wide: float
    size: float
    turned: bool
    font: str

    @property
    def right(self) -> float:
        return self.left + self.wide

    def overlaps(self, other: Piece) -> bool:
        """Whether the middles of the letters of both (0.1 to 0.6 of the size above the line) share any area."""
        across = min(self.right, other.right) - max(self.left, other.left)
        up = min(self.base + 0.6 * self.size, other.base + 0.6 * other.size)
        return across > 0.5 and up > max(self.base + 0.1 * self.size, other.base + 0.1 * other.size)


def pieces(data: bytes, page: int = 0) -> list[Piece]:
    """Every run of text on a page."""
    sheet = PdfReader(BytesIO(data)).pages[page]
    fonts = {name: font.get_object() for name, font in sheet["/Resources"]["/Font"].items()}
    found: list[Piece] = []
    state = {"font": "", "size": 0.0, "at": None, "gone": 0.0}

    def visit(operator, operands, current, text):
        if operator == b"Tf":
            state["font"], state["size"] = operands[0], float(operands[1])
        if operator != b"Tj" or not operands or not operands[0]:
            return
        font = fonts[state["font"]]
        first = int(font.get("/FirstChar", 0))
        widths = [float(each) for each in font.get("/Widths", [])]
        raw = operands[0].original_bytes if hasattr(operands[0], "original_bytes") else bytes(operands[0])
        wide = sum(widths[code - first] for code in raw if 0 <= code - first < len(widths)) / 1000 * state["size"]
        x = current[0] * text[4] + current[2] * text[5] + current[4]
        y = current[1] * text[4] + current[3] * text[5] + current[5]
        # Runs that follow each other on one line have the same matrix: each begins where the last one ended.
        state["gone"] = state["gone"] + found[-1].wide if found and state["at"] == (x, y) else 0.0
        state["at"] = (x, y)
        turned = abs(current[1]) > 1e-6 or abs(text[1]) > 1e-6
        found.append(Piece(x + state["gone"], y, wide, state["size"], turned, state["font"]))

    sheet.extract_text(visitor_operand_before=visit)
    return found

"""The pieces of a card's page: paragraphs in one size, measured before they are drawn."""

from __future__ import annotations

from typing import Any
from xml.sax.saxutils import escape

from compose.draw.card.card import Card, CardSection
from compose.draw.card.fonts import BOLD, PLAIN, SLANTED
from compose.draw.signs.palette import ACCENT, DARK, MIDDLE
from grammar.frozen import frozen


@frozen
class Block:
    """A paragraph with its height and the space above it, in points; `head` keeps with what follows."""

    paragraph: Any
    height: float
    above: float
    head: bool = False

    @property
    def tall(self) -> float:
        return self.above + self.height


def paragraph(text: str, width: float, above: float = 0.0, head: bool = False, **style: Any) -> Block:
    """A measured paragraph; `text` is plain, marks are escaped."""
    return marked(escape(text), width, above, head, **style)


def marked(text: str, width: float, above: float = 0.0, head: bool = False, **style: Any) -> Block:
    """A measured paragraph whose text may hold reportlab's own marks."""
    from reportlab.lib.styles import ParagraphStyle
    from reportlab.platypus import Paragraph

    bullet = style.pop("bullet", None)
    # Spaces that may shrink let a line run over its width by a twentieth of them.
    look = {"fontName": PLAIN, "fontSize": 9.0, "textColor": DARK, "splitLongWords": 1, "spaceShrinkage": 0, **style}
    look.setdefault("leading", 1.27 * look["fontSize"])
    found = Paragraph(text, ParagraphStyle("card", **look), bulletText=bullet)
    _wide, high = found.wrap(width, 10_000)
    return Block(found, high, above, head)


def headline(card: Card, width: float, size: float) -> list[Block]:
    """Title, what it is about, the facts."""
    big = 2.35 * size
    wide = width / (len(card.title) * 0.68 + 1)
    label_font = f'<font name="{BOLD}" color="{MIDDLE}">'
    pairs = [f"{label_font}{escape(label)}</font>&nbsp;{_together(escape(value))}" for label, value in card.facts]
    # The last fact, what the game practises, is long: it gets a line of its own.
    facts = ["&nbsp;&nbsp;&nbsp; ".join(pairs[:-1]), pairs[-1]] if len(pairs) > 1 else pairs
    blocks = [paragraph(card.title, width, fontName=BOLD, fontSize=max(min(big, wide), 1.4 * size), textColor=ACCENT)]
    if card.subtitle:
        blocks.append(paragraph(card.subtitle, width, 0.2 * size, fontName=BOLD, fontSize=1.2 * size, textColor=MIDDLE))
    if card.about:
        blocks.append(paragraph(card.about, width, 0.35 * size, fontName=SLANTED, fontSize=1.1 * size))
    return [
        *blocks,
        *(
            marked(line, width, 0.55 * size if not order else 0.2 * size, fontSize=size)
            for order, line in enumerate(facts)
        ),
    ]


def _together(value: str) -> str:
    """A short value is not broken between two lines."""
    return value.replace(" ", "&nbsp;") if len(value) < 36 else value


def section_blocks(section: CardSection, width: float, size: float) -> list[Block]:
    """A heading and a list."""
    head = paragraph(section.heading, width, 0.75 * size, True, fontName=BOLD, fontSize=1.12 * size, textColor=ACCENT)
    look: dict[str, Any] = {
        "fontSize": size,
        "leftIndent": 1.3 * size,
        "bulletIndent": 0.1 * size,
        "bulletFontName": BOLD,
        "bulletFontSize": size,
        "bulletColor": ACCENT,
    }
    return [head, *(paragraph(line, width, 0.2 * size, bullet="•", **look) for line in section.lines)]


def footer_blocks(card: Card, width: float, size: float) -> list[Block]:
    """Credit, licence and lineage in one small paragraph."""
    return [paragraph(" ".join(card.footer), width, fontSize=max(0.8 * size, 6.5), textColor=MIDDLE)]


def tall(blocks: list[Block]) -> float:
    """The height of blocks one below the other; the space above the first does not count."""
    return sum(block.tall for block in blocks) - (blocks[0].above if blocks else 0.0)


def in_columns(sections: list[list[Block]]) -> tuple[list[Block], list[Block]]:
    """Two columns as even as can be; a section is broken only where that saves a fifth of the height."""
    blocks = [block for section in sections for block in section]
    edges, at = set(), 0
    for section in sections:
        edges.add(at)
        at += len(section)
    best, chosen = float("inf"), len(blocks)
    for cut in range(1, len(blocks) + 1):
        if blocks[cut - 1].head:
            continue
        high = max(tall(blocks[:cut]), tall(blocks[cut:]))
        cost = high if cut in edges or cut == len(blocks) else 1.25 * high
        if cost < best - 1e-6:
            best, chosen = cost, cut
    return blocks[:chosen], blocks[chosen:]


def draw_blocks(canvas: Any, blocks: list[Block], x: float, top: float) -> float:
    """Draw blocks downwards from `top`; gives where the last one ends."""
    for order, block in enumerate(blocks):
        top -= block.height + (block.above if order else 0.0)
        block.paragraph.drawOn(canvas, x, top)
    return top

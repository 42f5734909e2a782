"""Card → one page of HTML with the plan inside, for the screen, for readers aloud, and for paper."""

from __future__ import annotations

from html import escape

from compose.draw.card.card import Card, CardSection
from compose.draw.page_html import page
from compose.draw.signs.palette import ACCENT, MIDDLE, PALE, WARNING, WHITE
from compose.draw.signs.to_svg import svg_of

LOOK = f"""
.facts {{ display: flex; flex-wrap: wrap; gap: .4rem 1.6rem; margin: 0; padding: .8rem 1.6rem;
  border-bottom: 1px solid {PALE} }}
.facts div {{ display: flex; gap: .5rem }}
.facts dt {{ font-weight: bold; color: {MIDDLE} }}
.facts dd {{ margin: 0 }}
.columns {{ columns: 2 22rem; column-gap: 2.4rem; column-rule: 1px solid {PALE}; padding: .2rem 1.6rem 0 }}
.columns section {{ break-inside: avoid; padding-top: .1rem; overflow: hidden }}
.care, .proof {{ margin: 1rem 1.6rem 0; padding: 0 1.1rem .8rem; border: 1.5px solid; border-radius: .4rem }}
.care {{ border-color: {WARNING}; background: #fdf4ea }}
.care h2, .care li::marker {{ color: {WARNING} }}
.proof {{ border-color: {ACCENT}; background: #eef3fa }}
.care h2, .proof h2 {{ margin-top: .7rem }}
footer {{ margin: 1rem 1.6rem 0; color: {MIDDLE}; font-size: .88rem }}
@media print {{
  .facts, .columns, figure {{ padding-left: 0; padding-right: 0 }}
  .care, .proof, footer {{ margin-left: 0; margin-right: 0; background: {WHITE} }}
  .columns {{ columns: 2 }}
  svg {{ max-height: 80mm }}
}}
"""


def html_of(card: Card) -> str:
    """The card as a document of its own."""
    facts = "".join(f"<div><dt>{escape(label)}</dt><dd>{escape(value)}</dd></div>" for label, value in card.facts)
    plain = "\n".join(_section(part) for part in card.sections if part.tone == "plain")
    boxes = "\n".join(_section(part) for part in card.sections if part.tone != "plain")
    footer = "".join(f"<div>{escape(line)}</div>" for line in card.footer)
    subtitle = f"<p><b>{escape(card.subtitle)}</b></p>" if card.subtitle else ""
    about = f"{subtitle}<p>{escape(card.about)}</p>" if card.about else subtitle
    body = (
        f'<main>\n<header><h1>{escape(card.title)}</h1>{about}</header>\n<dl class="facts">{facts}</dl>\n'
        f"<figure>{svg_of(card.plan).strip()}</figure>\n"
        f'<div class="columns">\n{plain}\n</div>\n{boxes}\n<footer>{footer}</footer>\n</main>'
    )
    return page(card.title, card.language, body, LOOK)


def _section(section: CardSection) -> str:
    items = "\n".join(f"<li>{escape(line)}</li>" for line in section.lines)
    kind = "" if section.tone == "plain" else f' class="{section.tone}"'
    return f"<section{kind}><h2>{escape(section.heading)}</h2>\n<ul>\n{items}\n</ul></section>"

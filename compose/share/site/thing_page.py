"""One thing of the shelf as a page of its own: the card to read or print, the plan, and what to download."""

from __future__ import annotations

import base64
from collections.abc import Iterator
from html import escape
from urllib.parse import quote

from compose.draw.card.card import Card, CardNotes, CardSection, card_of
from compose.draw.plan.of_class import class_plan_on_card
from compose.draw.signs.to_svg import svg_of
from compose.share.making import AtHand, played
from compose.share.pack.item import Item, Sheet
from compose.share.shelf.files import Stored
from compose.share.site.outline import framed_page
from compose.staging.resolved import resolved
from compose.staging.staging import stage
from grammar.frozen import frozen
from grammar.game import Game
from grammar.tree import GameSheet, RemixSheet
from library import kit_names, norms


@frozen
class Thing:
    """What a page is made of; `card` and `plan` are None for a modifier, and where a game or remix has mistakes."""

    stored: Stored
    sheet: Sheet
    game: Game | None
    card: Card | None
    plan: str | None

    @property
    def item(self) -> Item:
        return self.stored.item


def thing_of(stored: Stored, sheet: Sheet, at_hand: AtHand) -> Thing:
    """The thing with its card and its plan; a remix is made from what is at hand."""
    game = played(sheet, at_hand).value if isinstance(sheet, GameSheet | RemixSheet) else None
    if game is None:
        return Thing(stored, sheet, None, None, None)
    kit = kit_names()
    staging = stage(game, norms(), kit)
    lineage = stored.item.lineage
    made_of = (lineage.base_name, *(used.words() for used in lineage.modifiers)) if lineage else ()
    card = card_of(
        resolved(game), class_plan_on_card(game, staging), CardNotes(lineage=made_of), staging=staging, catalogue=kit
    )
    return Thing(stored, sheet, game, card, svg_of(card.plan))


def thing_page(thing: Thing, shelf_title: str, downloads: tuple[tuple[str, str], ...]) -> bytes:
    """The page of a thing; `downloads` are words and addresses, relative to the page."""
    item, card = thing.item, thing.card
    parts = [
        '<nav><a href="../index.html">All of ' + escape(shelf_title) + "</a></nav>",
        f"<main><h1>{escape(item.name)}</h1>",
        f"<p>{escape(card.about if card else item.about)}</p>",
        *(_card(card, thing.plan) if card else []),
        '<section class="downloads"><h2>Download</h2><ul>',
        *(f'<li><a href="{escape(quote(address))}" download>{escape(words)}</a></li>' for words, address in downloads),
        "</ul></section>",
        f"<details><summary>The rule sheet</summary><pre>{escape(item.text)}</pre></details></main>",
        "<footer>",
        *(f"<p>{escape(line)}</p>" for line in _footer(item, card)),
        "</footer>",
    ]
    return framed_page(f"{item.name} – {shelf_title}", "\n".join(parts))


def _card(card: Card, plan: str | None) -> Iterator[str]:
    yield "<dl>"
    for name, value in card.facts:
        yield f"<dt>{escape(name)}</dt><dd>{escape(value)}</dd>"
    yield "</dl>"
    if plan:
        # As a picture the plan cannot run anything, whoever wrote the names in it.
        picture = base64.b64encode(plan.encode()).decode()
        description = escape(card.plan.description)
        yield f'<img class="plan" src="data:image/svg+xml;base64,{picture}" alt="{description}">'
    for section in card.sections:
        yield from _section(section)


def _section(section: CardSection) -> Iterator[str]:
    yield f'<section class="{escape(section.tone)}"><h2>{escape(section.heading)}</h2><ul>'
    for line in section.lines:
        yield f"<li>{escape(line)}</li>"
    yield "</ul></section>"


def _footer(item: Item, card: Card | None) -> tuple[str, ...]:
    if card is not None:
        return card.footer
    credit = "; ".join(item.credit)
    told = (f"Credit: {credit}." if credit else "", f"Licence: {item.licence}." if item.licence else "")
    return tuple(line for line in told if line)

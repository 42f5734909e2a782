"""What goes onto paper, as PDF: the card, the large card, the plan, the lesson, the booklet."""

from __future__ import annotations

from collections.abc import Sequence

from compose.answer.answer import Answer
from compose.draw.card.booklet import booklet_of
from compose.draw.card.card import Card
from compose.draw.card.large import large_pdf_of
from compose.draw.card.of_remix import Look, card_of_remix, titled
from compose.draw.card.pdf import pdf_of
from compose.draw.card.plan_page import plan_pdf_of
from compose.draw.card.proof import answer_lines
from compose.draw.plan.of_class import class_plan
from compose.draw.signs.shapes import Drawing
from compose.draw.signs.to_svg import svg_of
from compose.modifiers.remix import Remix
from compose.page.answers.at_hand import remixed
from compose.page.answers.for_class import shown
from compose.page.answers.known import all_of, fit_of_asked
from compose.page.answers.values import Asked
from compose.page.wording import page_wording
from compose.page.work.worker import raise_if_withdrawn
from grammar.finding import Outcome
from grammar.game import Game

PAPER = "A4"


def card(asked: Asked, large: bool) -> bytes | str:
    """The card as PDF, with what is known of the game; or why there is none."""
    made = remixed(asked.texts, asked.uses).value
    if made is None:
        return _no_game(asked)
    one = _card(asked, made, large)
    return _given(large_pdf_of(one, PAPER) if large else pdf_of(one, PAPER))


def plan(asked: Asked) -> bytes | str:
    """The plan of the courts as SVG; or why there is none."""
    found = _plan(asked)
    return svg_of(found[0]).encode() if found else _no_game(asked)


def plan_page(asked: Asked) -> bytes | str:
    """The plan of the courts on a page of its own, as PDF; or why there is none."""
    found = _plan(asked)
    if found is None:
        return _no_game(asked)
    drawing, game = found
    return plan_pdf_of(drawing, game, asked.language, PAPER)


def _no_game(asked: Asked) -> str:
    return page_wording(asked.language).say("These do not go together")


def _plan(asked: Asked) -> tuple[Drawing, Game] | None:
    made = remixed(asked.texts, asked.uses).value
    if made is None:
        return None
    game, staging = titled(made), shown(fit_of_asked(asked))
    return class_plan(game, staging, wording=page_wording(asked.language)), game


def booklet(games: Sequence[Asked], title: str) -> bytes | str:
    """The cards of several games in one PDF."""
    cards = []
    for asked in games:
        raise_if_withdrawn()
        made = remixed(asked.texts, asked.uses).value
        if made is not None:
            cards.append(_card(asked, made, False))
    outcome = booklet_of(cards, title, PAPER, wording=page_wording(games[0].language))
    return _given(Outcome(outcome.value.pdf if outcome.value else None, outcome.findings))


def _card(asked: Asked, made: Remix, large: bool) -> Card:
    wording = page_wording(asked.language)
    staging, answer = shown(fit_of_asked(asked)), all_of(asked)
    known: tuple[str, ...] = ()
    if isinstance(answer, Answer):
        known = answer_lines(answer, wording)
    return card_of_remix(made, staging, Look(wording=wording, large=large), known)


def _given(outcome: Outcome[bytes]) -> bytes | str:
    """The bytes; else what stands in their way."""
    return outcome.value if outcome.value is not None else " ".join(each.title for each in outcome.findings)

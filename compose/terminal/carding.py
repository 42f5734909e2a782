"""The card of a game: on the terminal, or as a PDF, SVG, Markdown or text file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from compose.answer.answer import Answer
from compose.check import Budget
from compose.draw.card.card import Card
from compose.draw.card.of_remix import USUAL_LOOK, Look, card_of_remix, titled
from compose.draw.card.proof import answer_lines, check_lines
from compose.draw.plan.of_class import class_plan
from compose.draw.signs.shapes import Drawing
from compose.telling.wording import Wording
from compose.terminal.answer import exit_code, refuse, say, say_findings, say_json, stop
from compose.terminal.answering import answer_json, in_language
from compose.terminal.patience import INTERRUPTED, Patience
from compose.terminal.stages import Ready, answered, ready
from compose.terminal.typed.appearance import units_named, wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.writing import ends_with, write
from grammar.frozen import evolve, frozen
from grammar.words import listing

ENDINGS = (".pdf", ".html", ".svg", ".md", ".txt")
PAPERS = ("A4", "Letter")


@frozen
class Asked:
    """How a card is to look, and how far its game is looked at (`seconds` None: until that is done)."""

    paper: str
    large: bool
    units: str
    language: str
    budget: Budget
    seconds: float | None


def make_card(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    out: Path | None,
    asked: Asked,
    force: bool,
    as_json: bool,
) -> int:
    """Print or write a card; the exit code. `large` is large print on two pages."""
    sheet = paper_named(asked.paper, as_json)
    look = Look(units_named(asked.units, as_json), wording_named(asked.language, as_json), asked.large)
    ends_with(out, ENDINGS, as_json)
    prepared = ready(name, modifiers, who, as_json)
    with Patience(asked.seconds) as patience:
        answer = answered(prepared, evolve(asked.budget, keep_going=patience.keep_going))
    staging = prepared.staging
    card = card_for(prepared, answer, look)
    if out is not None:
        plan = class_plan(titled(prepared.remix), staging, units=look.units, wording=look.wording)
        data = _written(card, plan, out.suffix.lower(), sheet, asked.large, as_json)
        write(out, data, force, as_json)
    _say(card, out, answer, look.wording, as_json)
    return INTERRUPTED if patience.stopped else exit_code(answer.findings)


def paper_named(name: str, as_json: bool) -> str:
    """The paper by its name in any case; ends the command where there is no such paper."""
    sheet = next((known for known in PAPERS if known.lower() == name.lower()), None)
    if sheet is None:
        refuse(f"There is no paper called `{name}`.", f"Choose {listing(PAPERS, 'or')}.", as_json)
    return sheet


def card_for(prepared: Ready, answer: Answer, look: Look = USUAL_LOOK) -> Card:
    """The card of a remix with what is known of it."""
    return card_of_remix(prepared.remix, prepared.staging, look, answer_lines(answer, look.wording))


def _written(card: Card, plan: Drawing, ending: str, paper: str, large: bool, as_json: bool) -> bytes:
    if ending == ".pdf":
        from compose.draw.card.large import large_pdf_of
        from compose.draw.card.pdf import pdf_of

        outcome = large_pdf_of(card, paper) if large else pdf_of(card, paper)
        if outcome.value is None:
            stop(outcome.findings, as_json)
        return outcome.value
    if ending == ".svg":
        from compose.draw.signs.to_svg import svg_of

        return svg_of(plan).encode()
    if ending == ".html":
        from compose.draw.card.html import html_of

        return html_of(card).encode()
    from compose.draw.card.text import markdown_of, text_of

    return (markdown_of(card) if ending == ".md" else text_of(card)).encode()


def _say(card: Card, out: Path | None, answer: Answer, wording: Wording, as_json: bool) -> None:
    if as_json:
        say_json(
            {
                "title": card.title,
                "facts": dict(card.facts),
                "sections": [{"heading": part.heading, "lines": list(part.lines)} for part in card.sections],
                "footer": list(card.footer),
                "written": str(out) if out else None,
            }
            | answer_json(answer)
        )
        return
    if out is None:
        from compose.draw.card.text import text_of

        say(text_of(card).rstrip())
    else:
        say(wording.say("The card of {game} is in {file}.", game=card.title, file=out))
        say(f"{next(check_lines(answer, wording))}.")
    say_findings(in_language(answer, wording), wording=wording, notes_framed=False)

"""The card of a game: on the terminal, or as a PDF, SVG, Markdown or text file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import attrs

import library
from compose.check import Budget, CheckResult
from compose.draw.card import Card, CardNotes, card_of
from compose.draw.plan import plan_findings, plan_of
from compose.draw.shapes import Drawing
from compose.net.floor import floor_of
from compose.net.floor_values import Floor
from compose.net.lower.trying import sizes_m
from compose.terminal.answer import exit_code, finding_json, refuse, say, say_findings, say_json, stop
from compose.terminal.checking import summary
from compose.terminal.finding_games import kit
from compose.terminal.remixing import remix_title
from compose.terminal.stages import Ready, checked, ready
from compose.terminal.writing import write
from grammar.finding import Finding, Severity
from grammar.words import count, did_you_mean, listing
from library import Hall

ENDINGS = (".pdf", ".svg", ".md", ".txt")
PAPERS = ("A4", "Letter")


def make_card(
    name: str,
    modifiers: Sequence[str],
    pupils: int | None,
    out: Path | None,
    hall: str | None,
    paper: str,
    force: bool,
    as_json: bool,
) -> int:
    """Print or write a card; the exit code."""
    sheet = next((known for known in PAPERS if known.lower() == paper.lower()), None)
    if sheet is None:
        refuse(f"There is no paper called `{paper}`.", f"Choose {listing(PAPERS, 'or')}.", as_json)
    if out is not None and out.suffix.lower() not in ENDINGS:
        refuse(f"`{out}` does not say what to write.", f"End its name with {listing(ENDINGS, 'or')}.", as_json)
    prepared = ready(name, modifiers, pupils, as_json)
    result = checked(prepared, Budget(2_000_000, 60.0))
    floor = floor_of(prepared.game, prepared.players, sizes_m(prepared.game))
    in_hall = _hall(hall, as_json)
    card = card_for(prepared, result, floor, in_hall)
    findings = (*prepared.findings, *result.findings, *plan_findings(prepared.game, floor, in_hall))
    if out is not None:
        data = _written(card, plan_of(prepared.game, floor, in_hall), out.suffix.lower(), sheet, as_json)
        write(out, data, force, as_json)
    _answer(card, out, findings, as_json)
    return exit_code(findings)


def _hall(name: str | None, as_json: bool) -> Hall | None:
    if name is None:
        return None
    halls = library.halls()
    known = {key.lower(): hall for key, hall in halls.items()}
    if name.lower() not in known:
        hint = did_you_mean(name, halls) or f"The library has {listing(halls)}."
        refuse(f"There is no hall called `{name}`.", hint, as_json)
    return known[name.lower()]


def card_for(prepared: Ready, result: CheckResult, floor: Floor, hall: Hall | None) -> Card:
    """The card of a remix with what the check says of it."""
    made = prepared.remix
    notes = CardNotes(
        modifiers=tuple((use.label, use.modifier.about) for use in made.uses),
        check=tuple(_check_lines(prepared, result)),
        cautions=made.cautions,
        lineage=(made.base.title, *(use.label for use in made.uses)) if made.uses else (),
    )
    game = attrs.evolve(made.game, sheet=attrs.evolve(made.game.sheet, title=remix_title(made)))
    return card_of(game, floor, notes, hall=hall, catalogue=kit())


def _check_lines(prepared: Ready, result: CheckResult) -> list[str]:
    people = listing(f"{number} {side}" for side, number in prepared.players.items())
    to_mend = [finding for finding in result.findings if finding.severity is Severity.WARNING]
    head = f"Checked for {people}"
    if to_mend:
        return [f"{head}: {count(len(to_mend), 'thing')} to mend", *(finding.title for finding in to_mend[:2])]
    sentences = [line for line in summary(prepared, result.facts) if not line.startswith("Looked")]
    return [f"{head}: nothing to mend", *sentences[:2]]


def _written(card: Card, plan: Drawing, ending: str, paper: str, as_json: bool) -> bytes:
    if ending == ".pdf":
        from compose.draw.card_pdf import pdf_of

        outcome = pdf_of(card, paper)
        if outcome.value is None:
            stop(outcome.findings, as_json)
        return outcome.value
    if ending == ".svg":
        from compose.draw.to_svg import svg_of

        return svg_of(plan).encode()
    from compose.draw.card_text import markdown_of, text_of

    return (markdown_of(card) if ending == ".md" else text_of(card)).encode()


def _answer(card: Card, out: Path | None, findings: Sequence[Finding], as_json: bool) -> None:
    if as_json:
        say_json(
            {
                "title": card.title,
                "facts": dict(card.facts),
                "sections": [{"heading": part.heading, "lines": list(part.lines)} for part in card.sections],
                "footer": list(card.footer),
                "written": str(out) if out else None,
                "findings": [finding_json(finding) for finding in findings],
            }
        )
        return
    if out is None:
        from compose.draw.card_text import text_of

        say(text_of(card).rstrip())
    else:
        say(f"The card of {card.title} is in {out}.")
    say_findings(findings)

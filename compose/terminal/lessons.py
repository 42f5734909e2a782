"""The sheet of a lesson with several games: on the terminal, or as a PDF, HTML, Markdown or text file."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import library
from compose.answer.answer import Answer, not_proved, to_mend
from compose.check import Budget
from compose.draw.card.card import Card
from compose.draw.card.of_remix import titled
from compose.draw.lesson.findings import lesson_findings
from compose.draw.lesson.known import known_line
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import LessonTable, Planned, lesson_table
from compose.draw.units import in_units
from compose.modifiers.words_before import words_before
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, exit_code, finding_json, refuse, say, say_findings, say_json, stop
from compose.terminal.answering import answer_json
from compose.terminal.carding import paper_named
from compose.terminal.stages import Ready, answered, checked, ready
from compose.terminal.typed.appearance import units_named, wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.writing import ends_with, write
from grammar.words import listing

ENDINGS = (".pdf", ".html", ".md", ".txt")
NUMBERED = re.compile(r"\s*(\d+)\s*:\s*(.+)")
USUAL_TITLE = "A lesson of games"


def make_lesson(
    names: Sequence[str],
    modifiers: Sequence[str],
    who: Who,
    out: Path | None,
    title: str,
    paper: str,
    units: str,
    language: str,
    quick: bool,
    budget: Budget,
    force: bool,
    as_json: bool,
) -> int:
    """Print or write the sheet; the exit code. `quick` takes the games' clocks instead of the forecast."""
    ends_with(out, ENDINGS, as_json)
    wording, shown, sheet = wording_named(language, as_json), units_named(units, as_json), paper_named(paper, as_json)
    uses = [uses_of(order, modifiers, len(names), as_json) for order in range(1, len(names) + 1)]
    games = [ready(name, given, who, as_json) for name, given in zip(names, uses, strict=True)]
    answers = [checked(each, budget) if quick else answered(each, budget) for each in games]
    planned = [_planned(each, answer) for each, answer in zip(games, answers, strict=True)]
    table = lesson_table(planned, library.norms())
    if table.short_min > 0:
        long, short = f"{table.lesson.minutes:.0f} min", f"{table.short_min:.0f} min"
        title = f"The lesson of {long} is {short} too short for {listing(names)}."
        refuse(title, "Leave a game out, or give the lesson more time with --minutes.", as_json)
    known = tuple(known_line(one.game.title, answer, wording) for one, answer in zip(planned, answers, strict=True))
    card = lesson_card(table, wording.say(title) if title == USUAL_TITLE else title, wording, known)
    card = in_units(card, shown)
    if out is not None:
        write(out, _written(card, out.suffix.lower(), sheet, as_json), force, as_json)
    findings = (*lesson_findings(table, library.norms()), *(each for answer in answers for each in answer.findings))
    if as_json:
        say_json(_json(table, card, out, answers) | {"findings": [finding_json(each) for each in findings]})
    else:
        _say(card, out, known, wording)
        say_findings((*to_mend(findings), *not_proved(findings)), wording=wording)
    return exit_code(findings)


def uses_of(order: int, modifiers: Sequence[str], games: int, as_json: bool) -> tuple[str, ...]:
    """The modifiers of one game of the lesson, counted from 1: those for all of them, and those with its number."""
    found = []
    for written in modifiers:
        numbered = NUMBERED.fullmatch(written)
        if numbered and not 1 <= int(numbered[1]) <= games:
            hint = f'Write "1: ..." to "{games}: ..." for one game, or no number for all of them.'
            refuse(f"The lesson has no game {numbered[1]}.", hint, as_json)
        if numbered is None or int(numbered[1]) == order:
            found.append(numbered[2] if numbered else written)
    return tuple(found)


def _planned(prepared: Ready, answer: Answer) -> Planned:
    """A game with its round as forecast, or else as long as its clock lets it be."""
    bell = prepared.net.bell
    clock = bell.after_s / 60 if bell is not None else None
    minutes = answer.round_minutes or clock
    told = prepared.staging, minutes, answer.active_in_round, answer.numbers
    return Planned(titled(prepared.remix), *told, words_before(prepared.remix))


def _written(card: Card, ending: str, paper: str, as_json: bool) -> bytes:
    if ending == ".pdf":
        from compose.draw.lesson.to_pdf import lesson_pdf_of

        outcome = lesson_pdf_of(card, paper)
        if outcome.value is None:
            stop(outcome.findings, as_json)
        return outcome.value
    if ending == ".html":
        from compose.draw.card.html import html_of

        return html_of(card).encode()
    from compose.draw.card.text import markdown_of, text_of

    return (markdown_of(card) if ending == ".md" else text_of(card)).encode()


def _say(card: Card, out: Path | None, known: Sequence[str], wording: Wording) -> None:
    if out is not None:
        say(wording.say("The lesson is in {file}.", file=out))
        for line in known:
            say("\n".join(textwrap.wrap(line, WIDTH, subsequent_indent="  ")))
    else:
        from compose.draw.card.text import text_of

        say(text_of(card).rstrip())


def _json(table: LessonTable, card: Card, out: Path | None, answers: Sequence[Answer]) -> dict[str, Any]:
    return {
        "title": card.title,
        "minutes": table.lesson.minutes,
        "play_minutes": table.played_min,
        "active_share": table.active,
        "games": [
            answer_json(answer)
            | {"title": one.game.title, "players": dict(one.staging.court.players), "round_minutes": one.round_min}
            for one, answer in zip(table.games, answers, strict=True)
        ],
        "slots": [
            {
                "what": slot.kind,
                "start": slot.start,
                "minutes": slot.minutes,
                "game": slot.game,
                "rounds": slot.rounds,
            }
            for slot in table.slots
        ],
        "kit": [{"name": each.name[1], "most": each.most, "by_game": list(each.by_game)} for each in table.kit],
        "written": str(out) if out else None,
    }

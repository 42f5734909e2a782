"""The sheet of a lesson with several games: on the terminal, or as a PDF, HTML, Markdown or text file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import library
from compose.draw.card import Card
from compose.draw.lesson_sheet import lesson_card
from compose.draw.lesson_table import LessonTable, Planned, lesson_table
from compose.draw.units import in_units
from compose.telling.wording import Wording
from compose.terminal.answer import FINE, refuse, say, say_json, stop
from compose.terminal.carding import paper_named
from compose.terminal.looks import titled, units_named, wording_named
from compose.terminal.stages import remixed, split
from compose.terminal.writing import write
from grammar.game import Game
from grammar.sentences.finish import After
from grammar.words import listing

ENDINGS = (".pdf", ".html", ".md", ".txt")
USUAL_TITLE = "A lesson of games"


def make_lesson(
    names: Sequence[str],
    pupils: int | None,
    minutes: float | None,
    out: Path | None,
    title: str,
    paper: str,
    units: str,
    language: str,
    quick: bool,
    force: bool,
    as_json: bool,
) -> int:
    """Print or write the sheet; the exit code. `quick` takes the games' clocks instead of the forecast."""
    if out is not None and out.suffix.lower() not in ENDINGS:
        refuse(f"`{out}` does not say what to write.", f"End its name with {listing(ENDINGS, 'or')}.", as_json)
    wording, shown, sheet = wording_named(language, as_json), units_named(units, as_json), paper_named(paper, as_json)
    table = lesson_table([_planned(name, pupils, quick, as_json) for name in names], library.norms(), minutes)
    if table.short_min > 0:
        long, short = f"{table.lesson.minutes:.0f} min", f"{table.short_min:.0f} min"
        title = f"The lesson of {long} is {short} too short for {listing(names)}."
        refuse(title, "Leave a game out, or give the lesson more time with --minutes.", as_json)
    card = in_units(lesson_card(table, wording.say(title) if title == USUAL_TITLE else title, wording), shown)
    if out is not None:
        write(out, _written(card, out.suffix.lower(), sheet, as_json), force, as_json)
    _answer(table, card, out, wording, as_json)
    return FINE


def _planned(name: str, pupils: int | None, quick: bool, as_json: bool) -> Planned:
    made, _said = remixed(name, (), as_json)
    game = titled(made)
    return Planned(game, split(made, pupils, as_json), _round(game, quick))


def _round(game: Game, quick: bool) -> float | None:
    clock = next(game.all_of("finish", After), None)
    known = clock.time.seconds / 60 if clock else None
    if quick:
        return known
    from compose.terminal.fitting import round_minutes

    return round_minutes(game) or known


def _written(card: Card, ending: str, paper: str, as_json: bool) -> bytes:
    if ending == ".pdf":
        from compose.draw.card_pdf import pdf_of

        outcome = pdf_of(card, paper)
        if outcome.value is None:
            stop(outcome.findings, as_json)
        return outcome.value
    if ending == ".html":
        from compose.draw.card_html import html_of

        return html_of(card).encode()
    from compose.draw.card_text import markdown_of, text_of

    return (markdown_of(card) if ending == ".md" else text_of(card)).encode()


def _answer(table: LessonTable, card: Card, out: Path | None, wording: Wording, as_json: bool) -> None:
    if as_json:
        say_json(_json(table, card, out))
    elif out is not None:
        say(wording.say("The lesson is in {file}.", file=out))
    else:
        from compose.draw.card_text import text_of

        say(text_of(card).rstrip())


def _json(table: LessonTable, card: Card, out: Path | None) -> dict[str, Any]:
    return {
        "title": card.title,
        "minutes": table.lesson.minutes,
        "games": [
            {"title": one.game.title, "players": dict(one.players), "round_minutes": one.round_min}
            for one in table.games
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

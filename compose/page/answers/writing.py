"""A text that is being written: its mistakes with their help, what was understood, and its usual wording."""

from __future__ import annotations

import re
from collections.abc import Sequence

import library
from compose.modifiers.remix_sheet import remix_text
from compose.page.answers.at_hand import remixed
from compose.page.answers.said import said
from compose.page.answers.values import Asked, Looked, Slip
from compose.page.wording import page_wording
from compose.share.bounds import MOST_RULES_BYTES
from compose.staging.floor.distance import reach
from compose.staging.laid_out import laid_out
from compose.staging.resolved import reading_of
from compose.staging.teams import usual_players
from compose.telling.read_back import read_back
from grammar.finding import Finding, Severity
from grammar.format import format_file
from grammar.game import Game
from grammar.mistakes.advice import applied
from grammar.mistakes.proofread import proofread
from grammar.parse import parse_bytes
from grammar.resolve import resolve

FILE = "the sheet"
MOST_SLIPS = 12


def look(language: str, text: str) -> Looked:
    """What is to be said of a text; the language first, so that who looked at a text last looks at the next one, too:
    half of its lines are known there."""
    wording = page_wording(language)
    data, categories = text.encode(), library.kit_categories()
    if len(data) > MOST_RULES_BYTES:
        title = wording.say("This is longer than a sheet may be.")
        return Looked("", (Slip(1, 1, 1, title, "", "", ""),), (), (), "")
    told = proofread(data, FILE, categories)
    found = [each for each in told if each.severity is Severity.ERROR]
    rules = parse_bytes(data, FILE).value
    game = resolve(rules.games[0], categories).value if rules and len(rules.games) == 1 else None
    if not found and game is None:
        title, hint = (
            wording.say("There is not one game in it."),
            wording.say("Begin with a line such as: game My Game"),
        )
        return Looked("", (Slip(1, 1, 1, title, hint, "", ""),), (), (), "")
    lines = re.split(r"\r\n|\r|\n", text)
    slips = tuple(_slip(each, lines, language) for each in found[:MOST_SLIPS])
    tidy = format_file(rules) if rules and not found else ""
    understood = _understood(game, language) if game and not found else ()
    more = len(found) - len(slips)
    later = any(each.severity is not Severity.ERROR for each in told[: len(slips)])
    return Looked(game.title if game else "", slips, understood, _names(game), tidy, more, later)


def _slip(finding: Finding, lines: Sequence[str], language: str) -> Slip:
    told, place = said(finding, page_wording(language)), finding.place
    first = next((each for each in finding.corrections if each.sure), None)
    mended = applied(lines, first) if first else ""
    write = first.line.strip() if first else ""
    return Slip(place.line, place.column, max(place.end, place.column + 1), told.title, told.hint, write, mended)


def _understood(game: Game, language: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    core = reading_of(game).value
    if core is None:
        return ()
    floor = laid_out(game, usual_players(game))
    back = read_back(
        core, page_wording(language), lambda who, aim, there: reach(floor, core, who, aim, waiting=there).metres
    )
    return tuple((part.heading, tuple(each.text for each in part.said)) for part in back.sections)


def _names(game: Game | None) -> tuple[str, ...]:
    if game is None:
        return ()
    kit = (name for line in game.kit for name in (line.name, line.plural))
    return tuple(dict.fromkeys((*(side.name for side in game.sides), *kit)))


def begun(asked: Asked) -> str | None:
    """The text to begin from: a remix as a sheet of its own."""
    made = remixed(asked.texts, asked.uses).value
    return remix_text(made) if made is not None else None

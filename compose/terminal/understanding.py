"""What was understood of a sheet, sentence by sentence, as a teacher checks it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import typer

from compose.draw.card.of_remix import titled
from compose.staging.floor.distance import reach
from compose.staging.floor.values import Floor
from compose.staging.laid_out import laid_out
from compose.staging.resolved import reading_of
from compose.staging.teams import usual_players
from compose.telling.for_class import class_lines
from compose.telling.read_back import ReadBack, Said, read_back
from compose.telling.side_voice import UsualDistance
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, exit_code, file_lines, say, say_findings, say_json, stop
from compose.terminal.stages import remixed, staging_for
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.appearance import wording_named
from compose.terminal.typed.at_hand import GAMES
from compose.terminal.typed.classes import Who
from compose.terminal.typed.finding_games import categories, path_of, shown_path
from grammar.core.game import Core
from grammar.mistakes.proofread import mistakes
from grammar.parse import read

GRANTED = "taken for granted"


def show_understood(name: str, modifiers: Sequence[str], who: Who, language: str, as_json: bool) -> int:
    """Print what was understood of a game, and for a class how it is staged; the exit code."""
    wording = wording_named(language, as_json)
    try:
        made, findings = remixed(name, modifiers, as_json)
    except typer.Exit:
        if not modifiers and not as_json:
            _say_what_can_be_read(name, wording)
        raise
    staging = staging_for(made, who, as_json) if who != Who() else None
    outcome = reading_of(titled(made))
    if outcome.value is None:
        stop(outcome.findings, as_json)
    findings = (*findings, *(staging.findings if staging is not None else ()))
    floor = staging.court.floor if staging is not None else laid_out(made.game, usual_players(made.game))
    back = read_back(outcome.value, wording, _usual_m(outcome.value, floor))
    if as_json:
        of_class = {"staging": staging_json(staging)} if staging is not None else {}
        say_json({"title": back.title, "lines": _lines(back), "more": _more(back)} | of_class)
        return exit_code(findings)
    say(back.title)
    for sentence in class_lines(staging, wording) if staging is not None else ():
        for line in textwrap.wrap(sentence, WIDTH, subsequent_indent="  "):
            say(line)
    say_understood(back, wording)
    say_findings(findings, wording=wording)
    return exit_code(findings)


def _say_what_can_be_read(name: str, wording: Wording) -> None:
    """What was understood of the other lines of a game with mistakes, which are told already; nothing of a remix."""
    from grammar.resolve.readable import readable  # loaded only where something is wrong

    path = path_of(name, GAMES, "game", False)
    found = readable("\n".join(file_lines(str(path))), shown_path(path), categories())
    outcome = reading_of(found.game) if found else None
    if found is None or outcome is None or outcome.value is None:
        _say_lines_read(path, wording)
        return
    say("")
    numbers = wording.listed(str(number) for number in found.left_out)
    pattern = "Line {lines} is not read yet." if len(found.left_out) == 1 else "Lines {lines} are not read yet."
    rest = wording.say("What was understood of the others, as if nothing stood there:")
    for line in textwrap.wrap(f"{wording.say(pattern, lines=numbers)} {rest}", WIDTH):
        say(line)
    floor = laid_out(found.game, usual_players(found.game))
    say_understood(read_back(outcome.value, wording, _usual_m(outcome.value, floor)), wording)


def _say_lines_read(path: Path, wording: Wording) -> None:
    """How the lines of a game are read in the language's words, where too little is read to say what they mean."""
    reading = read("\n".join(file_lines(str(path))), shown_path(path))
    wrong = {finding.place.line for finding in mistakes(reading, categories())}
    told = [line.sentence for game in reading.rules.games for part in game.sections for line in part.lines]
    right = [sentence for sentence in told if sentence.span.line not in wrong]
    if not right:
        return
    say("")
    known = wording.say("More cannot be told before that is mended. The other lines are read so:")
    for line in textwrap.wrap(known, WIDTH):
        say(line)
    for sentence in right:
        for line in textwrap.wrap(f"{sentence.span.line:>6} │ {sentence.words()}", WIDTH, subsequent_indent=" " * 9):
            say(line)


def _usual_m(core: Core, floor: Floor) -> UsualDistance:
    """How far it usually is for who aims at what, on this floor."""
    return lambda who, aim, waiting: reach(floor, core, who, aim, waiting=waiting).metres


def say_understood(back: ReadBack, wording: Wording) -> None:
    """The sentences under their headings; what no line says but every game takes for granted is marked."""
    for section in back.sections:
        say("")
        say(section.heading)
        for said in section.said:
            mark = f" ({wording.say(GRANTED)})" if said.granted else ""
            for line in textwrap.wrap(f"{said.text}{mark}", WIDTH, initial_indent="  - ", subsequent_indent="    "):
                say(line)


def _lines(back: ReadBack) -> list[dict[str, Any]]:
    """Every line of the sheet, and those taken for granted that have a say, with what was understood of it."""
    told = [(line, back.of_line(line.number)) for line in back.lines]
    return [
        {
            "line": line.span.line,
            "file": line.span.file,
            "section": line.section,
            "words": line.words,
            "understood": list(said),
            "taken_for_granted": line.granted,
            "read_by_the_check": line.read,
        }
        for line, said in told
        if said or not line.granted
    ]


def _more(back: ReadBack) -> list[str]:
    """What no single line says."""
    every: list[Said] = [said for section in back.sections for said in section.said]
    return [said.text for said in every if not said.lines]

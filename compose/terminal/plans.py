"""The floor plan of a game as a file of its own, and whether a hall is large enough for it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from compose.draw.card.of_remix import titled
from compose.draw.plan.of_class import class_described, class_plan
from compose.draw.signs.shapes import Drawing
from compose.draw.signs.to_svg import svg_of
from compose.draw.units import in_units
from compose.telling.wording import Wording
from compose.terminal.answer import WIDTH, exit_code, finding_json, say, say_findings, say_json
from compose.terminal.stages import remixed, staging_for
from compose.terminal.staging_json import staging_json
from compose.terminal.typed.appearance import units_named, wording_named
from compose.terminal.typed.classes import Who
from compose.terminal.writing import ends_with, write
from grammar.game import Game

ENDINGS = (".svg", ".pdf")


def make_plan(
    name: str,
    modifiers: Sequence[str],
    who: Who,
    out: Path | None,
    units: str,
    language: str,
    force: bool,
    as_json: bool,
) -> int:
    """Write the plan as a picture or a page to print, or tell it in words; the exit code."""
    ends_with(out, ENDINGS, as_json)
    chosen, wording = units_named(units, as_json), wording_named(language, as_json)
    made, said = remixed(name, modifiers, as_json)
    staging = staging_for(made, who, as_json)
    findings = in_units((*said, *staging.findings), chosen)
    drawing = class_plan(titled(made), staging, units=chosen, wording=wording)
    if out is not None:
        to_print = out.suffix.lower() == ".pdf"
        data = _to_print(drawing, titled(made), language) if to_print else svg_of(drawing).encode()
        write(out, data, force, as_json)
    words = in_units(class_described(titled(made), staging, wording), chosen)
    if as_json:
        say_json(
            {
                "title": drawing.title,
                "described": words,
                "players": dict(staging.court.players),
                "staging": staging_json(staging),
                "written": str(out) if out else None,
                "findings": [finding_json(finding) for finding in findings],
            }
        )
        return exit_code(findings)
    if out is not None:
        say(wording.say("The floor plan of {game} is in {file}.", game=titled(made).title, file=out))
    else:
        _say(drawing, words, wording)
    say_findings(findings, wording=wording, notes_framed=False)
    return exit_code(findings)


def _to_print(drawing: Drawing, game: Game, language: str) -> bytes:
    from compose.draw.card.plan_page import plan_pdf_of  # what writes PDF is slow to load

    return plan_pdf_of(drawing, game, language)


def _say(drawing: Drawing, words: str, wording: Wording) -> None:
    from textwrap import wrap

    for line in (drawing.title, "", *wrap(words, WIDTH), "", wording.say("Write it to a file with --out plan.pdf.")):
        say(line)

"""Lists of games and modifiers, and the sheets themselves."""

from __future__ import annotations

import textwrap
from typing import Any

from compose.modifiers.modifier import Modifier
from compose.terminal.answer import WIDTH, say, say_json
from compose.terminal.typed.at_hand import GAMES
from compose.terminal.typed.finding_games import modifiers_at_hand, path_of, read
from grammar.format import format_file


def list_modifiers(as_json: bool) -> None:
    """Every modifier under its STEP heading; one of one's own with its file."""
    found = modifiers_at_hand()
    if as_json:
        say_json({"modifiers": [_modifier_json(each) for each in found]})
        return
    for step in ("space", "task", "equipment", "people"):
        say(step.upper())
        for each in found:
            if each.step == step:
                lead = f"  {each.name}"
                for takes in each.takes:
                    say(f"{lead}  ({takes.words()})")
                    lead = " " * len(lead)
                if not each.takes:
                    say(lead)
                _paragraph(each.about, "    ")
                if not each.span.file.startswith("library/"):
                    say(f"    File: {each.span.file}")


def _modifier_json(each: Modifier) -> dict[str, Any]:
    return {
        "name": each.name,
        "heading": each.step,
        "about": each.about,
        "takes": [takes.words() for takes in each.takes],
        "needs": [need.words() for need in each.needs],
        "clashes": list(each.clashes),
        "file": each.span.file,
    }


def _paragraph(text: str, lead: str = "  ") -> None:
    for line in textwrap.wrap(text, WIDTH, initial_indent=lead, subsequent_indent=lead):
        say(line)


def show_sheet(name: str, as_json: bool) -> None:
    """The text of a game or modifier, in canonical form."""
    path = path_of(name, (*GAMES, "modifier", "class"), "game or modifier", as_json)
    text = format_file(read(path, as_json))
    if as_json:
        say_json({"file": str(path), "text": text})
    else:
        say(text.rstrip())

"""Lists of games and modifiers, and the sheets themselves."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import Any

import library
from compose.modifiers.modifier import Modifier
from compose.staging.teams import most_games
from compose.terminal.answer import refuse, say, say_json
from compose.terminal.finding_games import ENDING, game, library_modifiers, read, slug
from grammar.format import format_file
from grammar.game import Game
from grammar.words import did_you_mean, listing


def list_games(as_json: bool) -> None:
    """Every game of the library with ages, players and what it is about."""
    found = [game(str(path)) for path in library.game_paths()]
    if as_json:
        say_json({"games": [_game_json(each) for each in found]})
        return
    for each in found:
        least, most = each.ages_years
        sides = each.sides
        most_pupils = sum(side.most for side in sides) * most_games(each)
        people = f"{sum(side.least for side in sides)} to {most_pupils} pupils"
        say(f"{each.title}  (ages {least:g} to {most:g}, {people})")
        _paragraph(" ".join(each.told("about")))


def _game_json(each: Game) -> dict[str, Any]:
    return {
        "name": each.title,
        "ages_years": list(each.ages_years),
        "sides": [{"name": side.name, "least": side.least, "most": side.most} for side in each.sides],
        "kit": [{"name": line.name, "count": line.count, "per": line.owner or "all"} for line in each.kit],
        "about": " ".join(each.told("about")),
        "file": each.sheet.span.file,
    }


def list_modifiers(as_json: bool) -> None:
    """Every modifier of the library under its STEP heading."""
    found = library_modifiers()
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
    for line in textwrap.wrap(text, 78, initial_indent=lead, subsequent_indent=lead):
        say(line)


def show_sheet(name: str, as_json: bool) -> None:
    """The text of a game or modifier, in canonical form."""
    paths = {path.stem: path for path in (*library.game_paths(), *library.remix_paths(), *library.modifier_paths())}
    path = name if name.endswith(ENDING) or "/" in name else paths.get(slug(name))
    if path is None:
        titles = [stem.replace("-", " ") for stem in paths]
        hint = did_you_mean(name, titles) or f"The library has {listing(sorted(titles))}."
        refuse(f"There is no game or modifier called `{name}`.", hint, as_json)
    text = format_file(read(Path(path), as_json))
    if as_json:
        say_json({"file": str(path), "text": text})
    else:
        say(text.rstrip())

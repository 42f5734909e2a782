"""From what a teacher types to a class: a file, or a class of the library by its name."""

from __future__ import annotations

from pathlib import Path

from attrs import evolve

import library
from compose.staging.school_class import SchoolClass, class_of
from compose.terminal.answer import refuse, stop
from compose.terminal.finding_games import ENDING, categories, read, slug
from compose.terminal.halls import hall_named, halls_at_hand
from grammar.class_told import class_told
from grammar.words import did_you_mean, listing


def school_class(name: str, as_json: bool = False, hall: str | None = None) -> SchoolClass:
    """A class, in another hall where one is named; ends the command where there is none, or where it has mistakes.

    A hall that its sheet names may lie beside that sheet.
    """
    path = _path(name, as_json)
    rules = read(path, as_json)
    if not rules.classes:
        refuse(f"`{path}` holds no class.", "A class begins with a line such as: class Beck Class", as_json)
    named = class_told(rules.classes[0]).hall
    halls = halls_at_hand(path.parent, named.text, as_json) if named else library.halls()
    outcome = class_of(rules.classes[0], halls, categories())
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return evolve(outcome.value, hall=hall_named(hall, as_json)) if hall is not None else outcome.value


def _path(name: str, as_json: bool) -> Path:
    if name.endswith(ENDING) or "/" in name or "\\" in name:
        return Path(name)
    known = {path.stem: path for path in library.class_paths()}
    if slug(name) in known:
        return known[slug(name)]
    titles = [stem.replace("-", " ") for stem in known]
    hint = did_you_mean(name, titles) or f"The library has {listing(titles)}; write your own in a file."
    refuse(f"There is no class called `{name}`.", hint, as_json)

"""From what a teacher types to a class: a file, or a class of the library by its name."""

from __future__ import annotations

from pathlib import Path

import library
from compose.staging.school_class import SchoolClass, class_of
from compose.terminal.answer import refuse, stop
from compose.terminal.finding_games import ENDING, categories, read, slug
from grammar.words import did_you_mean, listing


def school_class(name: str, as_json: bool = False) -> SchoolClass:
    """A class; ends the command where there is none, or where its sheet has mistakes."""
    path = _path(name, as_json)
    rules = read(path, as_json)
    if not rules.classes:
        refuse(f"`{path}` holds no class.", "A class begins with a line such as: class Beck Class", as_json)
    outcome = class_of(rules.classes[0], library.halls(), categories())
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value


def _path(name: str, as_json: bool) -> Path:
    if name.endswith(ENDING) or "/" in name or "\\" in name:
        return Path(name)
    known = {path.stem: path for path in library.class_paths()}
    if slug(name) in known:
        return known[slug(name)]
    titles = [stem.replace("-", " ") for stem in known]
    hint = did_you_mean(name, titles) or f"The library has {listing(titles)}; write your own in a file."
    refuse(f"There is no class called `{name}`.", hint, as_json)

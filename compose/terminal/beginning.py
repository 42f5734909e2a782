"""A sheet to begin from: of the library by its kind of play, under a name of one's own."""

from __future__ import annotations

from pathlib import Path
from shlex import quote

from attrs import evolve

import library
from compose.terminal.answer import FINE, refuse, say, say_json
from compose.terminal.typed.finding_games import read, slug, used_as
from compose.terminal.writing import write
from grammar.format import format_file
from grammar.tree import RuleFile
from grammar.words import did_you_mean, listing


def begin(kind: str, title: str, out: Path | None, force: bool, as_json: bool) -> int:
    """Write or show a sheet to begin from, or list the kinds of play; the exit code."""
    known = {path.stem: path for path in library.beginning_paths()}
    names = [stem.replace("-", " ") for stem in known]
    if not kind:
        return _list(known, as_json)
    if slug(kind) not in known:
        hint = did_you_mean(kind.lower(), names) or f"There are {listing(names)}."
        refuse(f"There is no `{kind}` to begin from.", hint, as_json)
    rules = _called(read(known[slug(kind)], as_json), " ".join(title.split()))
    text = format_file(rules)
    if out is not None:
        write(out, text.encode(), force, as_json)
    if as_json:
        say_json({"text": text, "written": str(out) if out is not None else None})
    elif out is None:
        say(text.rstrip())
    else:
        then = f"ruleweave check {quote(str(out))}" if rules.games else used_as(rules, out).partition(": ")[2]
        say(f"{out} is a sheet to begin from. Change it, then: {then}")
    return FINE


def _called(rules: RuleFile, title: str) -> RuleFile:
    if not title:
        return rules
    return evolve(
        rules,
        games=tuple(evolve(each, title=title) for each in rules.games),
        classes=tuple(evolve(each, title=title) for each in rules.classes),
        halls=tuple(evolve(each, title=title) for each in rules.halls),
        modifiers=tuple(evolve(each, title=title) for each in rules.modifiers),
    )


def _list(known: dict[str, Path], as_json: bool) -> int:
    """The kinds of play, each with the note that stands on its sheet."""
    told = {stem.replace("-", " "): _note(read(path, as_json)) for stem, path in known.items()}
    if as_json:
        say_json({"things": [{"name": name, "about": about} for name, about in told.items()]})
        return FINE
    wide = max(len(name) for name in told)
    for name, about in told.items():
        say(f"{name:<{wide}}  {about.partition('. ')[0]}.".replace("..", "."))
    say('Begin with one: ruleweave new "knock down" --title "My Row" --out my-row.rules')
    return FINE


def _note(rules: RuleFile) -> str:
    notes = [each.notes for each in rules.games]
    notes += [each.notes for each in rules.classes]
    notes += [each.notes for each in (*rules.halls, *rules.modifiers)]
    return " ".join(note.removeprefix("note:").strip() for note in notes[0])

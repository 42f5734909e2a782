"""Remix files written from the command line, and carried over to a base that has changed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from compose.modifiers.carry_over import carried_over
from compose.modifiers.content_hash import content_hash
from compose.modifiers.parents import sheet_of_uses
from compose.terminal.answer import exit_code, finding_json, refuse, say, say_findings, say_json, say_to_error, stop
from compose.terminal.remix_files import base_of, recipe_in
from compose.terminal.stages import remixed
from compose.terminal.typed.finding_games import game, kit, rules_of, use
from compose.terminal.writing import write
from grammar.tree import RemixSheet
from grammar.words import listing
from grammar.written import written


def write_remix(
    name: str,
    modifiers: Sequence[str],
    title: str | None,
    about: str | None,
    credit: str | None,
    out: Path | None,
    force: bool,
    as_json: bool,
) -> int:
    """Keep a game with modifiers as a remix file, which is made again from its base; the exit code."""
    if not modifiers:
        refuse("A remix needs a modifier.", 'Name one: --with "roll instead"', as_json)
    base = game(name, as_json)
    made, findings = remixed(name, modifiers, as_json)
    uses = [use(written, as_json) for written in modifiers]
    about = about or f"{base.title} with {listing(each.label for each in uses)}."
    text = _text(sheet_of_uses(base, uses, title or f"{base.title} Remix"[:60], about, credit), as_json)
    if out is not None:
        write(out, text.encode(), force, as_json)
    if as_json:
        told = [finding_json(each) for each in findings]
        say_json({"text": text, "lines_changed": len(made.edits), "findings": told})
    else:
        say(text.rstrip() if out is None else f"Written to {out}.")
        say_findings(findings, to_error=out is None)
    return exit_code(findings)


def carry(path: Path, old: Path | None, out: Path | None, force: bool, as_json: bool) -> int:
    """Carry a remix file over to its base as it is now; conflicts are told, the exit code is 1 where there are any."""
    rules = rules_of(str(path), as_json)
    if not rules.remixes:
        refuse(f"`{path}` holds no remix.", "A remix begins with a line such as: remix Lantern Row on Ice", as_json)
    recipe = recipe_in(rules, as_json)
    base = base_of(recipe, as_json)
    before = game(str(old), as_json) if old is not None else None
    if before is not None and recipe.base_content not in (None, content_hash(before.sheet)):
        refuse(f"`{old}` is not the text that `{recipe.title}` was made from.", "Name the base as it was.", as_json)
    outcome = carried_over(recipe, base, kit(), before)
    if outcome.value is None:
        stop(outcome.findings, as_json)
    carried = outcome.value
    text = _text(carried.sheet, as_json)
    if out is not None:
        write(out, text.encode(), force, as_json)
    if as_json:
        say_json({"text": text, "findings": [finding_json(each) for each in carried.conflicts]})
        return exit_code(carried.conflicts)
    say(text.rstrip() if out is None else f"Written to {out}.")
    beside = out is None
    tell = say_to_error if beside else say
    tell("")
    say_findings(carried.conflicts, to_error=beside)
    if not carried.conflicts:
        tell("Nothing is lost: all that the remix does, it does on its base as it is now.")
    return exit_code(carried.conflicts)


def _text(sheet: RemixSheet, as_json: bool) -> str:
    outcome = written(sheet)
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value

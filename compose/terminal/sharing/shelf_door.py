"""The door to the shelf for the commands: it is opened, things are found by name, refusals are one clear line."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import NoReturn, TypeVar

import typer

import library
from compose.share.folder_at_hand import FolderAtHand
from compose.share.naming import slug
from compose.share.pack.item import Item, Sheet, item_of, sheets_in
from compose.share.shelf.files import read_stored
from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.shelf import Shelf
from compose.share.shelf.usual_folder import usual_folder
from compose.terminal.answer import exit_code, refuse, say_to_error, stop
from compose.terminal.typed.finding_games import ENDING, read
from grammar.finding import Finding, Outcome
from grammar.words import did_you_mean

Value = TypeVar("Value")


def given(outcome: Outcome[Value], as_json: bool) -> Value:
    """The value of an outcome; ends the command with one clear line where there is none."""
    if outcome.value is None:
        refuse_in_one_line(outcome.findings, as_json)
    return outcome.value


def refuse_in_one_line(findings: tuple[Finding, ...], as_json: bool) -> NoReturn:
    """End with the first finding as one line, or with all as JSON."""
    if as_json:
        stop(findings, as_json)
    first = findings[0]
    say_to_error(" ".join(part for part in (f"{first.place.file}: {first.title}", first.hint) if part))
    raise typer.Exit(exit_code(findings))


def shelf_folder(named: Path | None) -> Path:
    """Where the shelf is."""
    return named if named is not None else usual_folder()


def own_shelf(named: Path | None, as_json: bool) -> Shelf:
    """The shelf, opened; made where there is none yet."""
    return given(open_shelf(shelf_folder(named)), as_json)


def today() -> str:
    """The day, as ISO 8601 writes it."""
    return date.today().isoformat()


def at_hand(named: Path | None) -> FolderAtHand:
    """Bases and modifiers of the shelf and of the library."""
    return FolderAtHand(shelf_folder(named))


def thing(name: str, named: Path | None, as_json: bool) -> tuple[Item, Sheet]:
    """A thing by the name of its file, by its name on the shelf, or by its name in the library."""
    if name.endswith(ENDING) or "/" in name or "\\" in name:
        rules = read(Path(name), as_json)
        sheets = sheets_in(rules)
        if not sheets and (rules.classes or rules.halls):
            what = "a class" if rules.classes else "a hall"
            hint = "It stays with you: it tells of your own school. Games, remixes and modifiers are passed on."
            refuse(f"`{name}` holds {what}.", hint, as_json)
        if len(sheets) != 1:
            hint = "Write each game, remix or modifier in a file of its own."
            refuse(f"`{name}` does not hold just one thing.", hint, as_json)
        return item_of(sheets[0]), sheets[0]
    folder = shelf_folder(named)
    if folder.is_dir():
        with own_shelf(named, as_json) as shelf:
            if slug(name) in shelf.slugs():
                path = given(shelf.named(name), as_json).path
                stored, sheet = read_stored(folder, path)
                return stored.item, sheet
    known = {path.stem: path for path in (*library.modifier_paths(), *library.remix_paths(), *library.game_paths())}
    if slug(name) not in known:
        hint = did_you_mean(name, [stem.replace("-", " ") for stem in known]) or "Give its file."
        refuse(f"There is nothing called `{name}` on the shelf or in the library.", hint, as_json)
    sheet = sheets_in(read(known[slug(name)], as_json))[0]
    return item_of(sheet), sheet

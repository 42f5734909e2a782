"""A pack is made on the terminal: the things named, what they are made of, and nothing that cannot be made."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from compose.modifiers.parents import sheet_of_uses
from compose.share.making import Sheets, parts_of, played
from compose.share.pack.item import ENDING, Item, Sheet, item_of
from compose.share.pack.pack import make_pack, sha256
from compose.terminal.answer import FINE, refuse, say, say_json
from compose.terminal.sharing.packing import called, item_json, say_wrapped
from compose.terminal.sharing.shelf_door import at_hand, given, shelf_folder, thing
from compose.terminal.writing import ends_with, write
from grammar.tree import GameSheet, RemixSheet
from grammar.words import listing


def make(
    names: Sequence[str],
    modifiers: Sequence[str],
    title: str,
    origin: str,
    out: Path,
    force: bool,
    shelf: Path | None,
    as_json: bool,
) -> int:
    """Make a pack of named things, with modifiers also of what they make of each game; the exit code."""
    ends_with(out, (".zip",), as_json)
    found = [thing(name, shelf, as_json) for name in names]
    sheets: list[Sheet] = [sheet for _, sheet in found]
    items = [item for item, _ in found]
    if modifiers:
        sheets += _own_modifiers(modifiers, shelf, as_json)
        for name, (item, _) in zip(names, found, strict=True):
            if item.kind != "modifier":
                remix = _remix_sheet(name, item, modifiers, shelf, as_json)
                sheets.append(remix)
                items.append(item_of(remix))
    known = {item.content for item in items}
    parts = [item_of(part) for part in parts_of(sheets, Sheets(tuple(sheets), at_hand(shelf)))]
    items += [part for part in parts if part.content not in known]
    _only_what_can_be_made(sheets, Sheets(tuple(sheets), at_hand(shelf)), as_json)
    unique = list({item.content: item for item in items}.values())
    data = given(make_pack(unique, title or items[0].name, origin), as_json)
    write(out, data, force, as_json)
    unlicensed = [item.name for item in unique if item.licence is None]
    if as_json:
        told = {"file": str(out), "sha256": sha256(data), "items": [item_json(item) for item in unique]}
        say_json(told | {"without_licence": unlicensed})
        return FINE
    say(f"{out} carries {listing(called(item) for item in unique)}.")
    if unlicensed:
        say_wrapped(f"No licence is named by {listing(unlicensed)}: nobody can tell whether it may be passed on.")
    return FINE


def _own_modifiers(modifiers: Sequence[str], shelf: Path | None, as_json: bool) -> list[Sheet]:
    """The modifiers of a call that are given as files, so that whoever takes the pack has them, too."""
    files = (written.partition(",")[0].strip() for written in modifiers)
    return [thing(file, shelf, as_json)[1] for file in files if file.endswith(ENDING)]


def _only_what_can_be_made(sheets: Sequence[Sheet], around: Sheets, as_json: bool) -> None:
    """Ends the command where a game or remix of a pack could not be made by whoever takes it."""
    for sheet in sheets:
        outcome = played(sheet, around) if isinstance(sheet, GameSheet | RemixSheet) else None
        if outcome is not None and outcome.value is None:
            first = outcome.findings[0]
            refuse(f"{sheet.title} cannot be made, so it is not packed: {first.title}", first.hint, as_json)


def _remix_sheet(name: str, item: Item, modifiers: Sequence[str], shelf: Path | None, as_json: bool) -> RemixSheet:
    from compose.modifiers.remix_sheet import remix_title
    from compose.terminal.stages import remixed

    on_shelf = shelf_folder(shelf) / item.path
    is_file = name.endswith(ENDING) or "/" in name
    made, _ = remixed(str(on_shelf) if on_shelf.is_file() and not is_file else name, modifiers, as_json)
    return sheet_of_uses(made.base, made.uses, remix_title(made))
